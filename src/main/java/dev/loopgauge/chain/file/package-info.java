/**
 * Reads chain files and changes: YAML with the line and column of every value, checked against what
 * a chain may say. The only part of {@code chain} that knows the YAML library.
 */
package dev.loopgauge.chain.file;
