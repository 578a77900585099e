package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.RateSource;
import dev.loopgauge.signal.SampleRate;
import java.util.Optional;

/**
 * Lines that were opened together.
 *
 * @param output the line to play to; empty when nothing is to be played
 * @param input the line to record from
 * @param rate the rate of both
 * @param source how it is known that both run at it
 * @param alone whether other programs have lost a device by it
 */
record OpenLines(
    Optional<PcmLine> output, PcmLine input, SampleRate rate, RateSource source, boolean alone) {}
