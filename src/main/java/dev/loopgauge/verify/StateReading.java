package dev.loopgauge.verify;

import dev.loopgauge.estimate.result.Measurement;
import java.util.Optional;

/**
 * What was read with a plug-in in one state.
 *
 * @param state the state's name: active, bypassed, reloaded, or what the user calls it
 * @param path the path through the plug-in
 * @param reported what host or plug-in report then, where that is known
 * @param witness another channel of the same host at the same time, where one was watched
 */
public record StateReading(
    String state,
    Measurement path,
    Optional<ReportedDelay> reported,
    Optional<Measurement> witness) {}
