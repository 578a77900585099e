package dev.loopgauge.fuzz;

import java.util.List;

/** One kind of input from outside, and what must hold whatever it is. */
interface Target {
  /** Whole inputs, which others are made of. */
  List<byte[]> seeds() throws Exception;

  /**
   * Reads an input, or sees it refused in words.
   *
   * @throws Exception when it was neither: what escapes is a fault
   */
  void check(byte[] input) throws Exception;
}
