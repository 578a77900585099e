package dev.loopgauge.chain;

import java.util.List;

/** The block sizes that hosts offer. */
public final class BlockSizes {
  /** Those in common use, in samples, the smallest first. */
  public static final List<Integer> USUAL =
      List.of(16, 32, 48, 64, 96, 128, 192, 256, 384, 512, 1024, 2048, 4096);

  private BlockSizes() {}
}
