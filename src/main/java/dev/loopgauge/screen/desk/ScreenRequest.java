package dev.loopgauge.screen.desk;

import dev.loopgauge.job.live.LiveChoice;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What the screen is about.
 *
 * @param chain the chain file
 * @param live what to play and record, and where
 * @param journal the journal; empty for the default one
 * @param show the show that results are kept under; empty until somebody names one
 */
public record ScreenRequest(
    Path chain, LiveChoice live, Optional<String> journal, Optional<String> show) {}
