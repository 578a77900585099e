package dev.loopgauge.job.recorded;

import java.nio.file.Path;

/**
 * One channel of a recording.
 *
 * @param file the recording
 * @param number the channel, counted from 1
 */
public record RecordedChannel(Path file, int number) {}
