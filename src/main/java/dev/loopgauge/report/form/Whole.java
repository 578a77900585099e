package dev.loopgauge.report.form;

/** A record that is a document by itself, also where it stands within another: with its schema. */
public interface Whole {
  /** The version of all JSON documents. */
  int SCHEMA = 1;
}
