package dev.loopgauge.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.Hinted;

/** A refusal that a person can act on; anything else escapes. */
final class Refusal {
  private Refusal() {}

  /** Something that reads an input. */
  interface Reader {
    void read() throws Exception;
  }

  static void orRead(Reader reader) throws Exception {
    try {
      reader.read();
    } catch (Exception e) {
      if (!(e instanceof Hinted refusal)) {
        throw e;
      }
      assertTrue(!refusal.getMessage().isBlank() && !refusal.hint().isBlank(), refusal::code);
    }
  }
}
