package dev.loopgauge.report.form;

import java.util.Set;

/**
 * A document, or a part of one, some of whose keys are not there when they have no value; the
 * others are null then.
 */
public interface Sparse {
  /** The components that have no key while they are an empty Optional or list. */
  Set<String> leftOut();
}
