package dev.loopgauge.journal;

/**
 * An entry that is not as it was stored, or can't be read.
 *
 * @param id its id as far as it can be told
 * @param what what is wrong with it, part of a sentence
 */
public record DamagedEntry(String id, String what) {
  /** The sentence, without a full stop. */
  public String told() {
    return "entry " + id + " " + what;
  }
}
