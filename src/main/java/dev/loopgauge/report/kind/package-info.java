/**
 * Reads documents again: each command's as the record that it was written from, and those of
 * earlier versions of this program too.
 */
package dev.loopgauge.report.kind;
