package dev.loopgauge.verify.verdict;

import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.Locale;
import java.util.Optional;

/** How an aspect stands, or all of them: of several the last one counts. */
public enum Judgement {
  /** Nothing says how it should be, or it can't be seen here. */
  NOT_JUDGED,
  /** As it should be. */
  GOOD,
  /** It should be some way, and may or may not be so. */
  UNDECIDED,
  /** Not as it should be. */
  BAD;

  /** The worst of several; not judged where there is none. */
  public static Judgement worst(Collection<Judgement> judgements) {
    return judgements.isEmpty() ? NOT_JUDGED : Collections.max(judgements);
  }

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The one with this name in documents; empty where there is none. */
  public static Optional<Judgement> labelled(String label) {
    return Arrays.stream(values()).filter(one -> one.label().equals(label)).findFirst();
  }
}
