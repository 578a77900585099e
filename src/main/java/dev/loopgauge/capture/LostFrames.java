package dev.loopgauge.capture;

/**
 * Frames that a stream lacks, or has twice.
 *
 * @param frame the first of them, counted from the start of the stream, as near as is known
 * @param frames how many were lost; negative where that many came twice, 0 where nobody knows
 * @param text what happened, one sentence
 */
public record LostFrames(long frame, long frames, String text) {}
