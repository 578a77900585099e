package dev.loopgauge.plan;

/**
 * A block size at which sound comes near its picture without any delay added.
 *
 * @param blockSize the block size, in samples
 * @param match what remains at it
 */
public record PictureBlock(int blockSize, PictureMatch match) {}
