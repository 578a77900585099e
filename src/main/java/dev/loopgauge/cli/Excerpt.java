package dev.loopgauge.cli;

import dev.loopgauge.estimate.Reading;
import java.util.List;

/**
 * What is taken from two recordings.
 *
 * @param reading reference and return, starting at the same instant
 * @param notes what the reader of the result must know about it, one sentence each
 */
record Excerpt(Reading reading, List<String> notes) {
  /** Copies the notes. */
  Excerpt {
    notes = List.copyOf(notes);
  }
}
