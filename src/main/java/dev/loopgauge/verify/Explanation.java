package dev.loopgauge.verify;

/**
 * One change of the chain that would make its prediction meet the measurement.
 *
 * @param cause the kind of change, by the name that documents use
 * @param text the change and what to check at the rig, one sentence
 * @param predictedSamples the loop's delay with that change, in samples at the measured rate
 * @param residualSamples what it leaves unexplained, measured less predicted
 */
public record Explanation(
    String cause, String text, double predictedSamples, double residualSamples) {}
