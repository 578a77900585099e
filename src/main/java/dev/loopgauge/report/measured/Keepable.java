package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Document;

/** A document that tells whether it was kept in the journal, where that was asked. */
public interface Keepable extends Document {
  /** The same, with whether it was kept. */
  Document withKept(KeptRecord kept);
}
