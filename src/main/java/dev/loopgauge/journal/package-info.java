/**
 * The show journal: what was measured when, at which show, on which rig, kept for years. Entries
 * are only ever added; a correction is a new entry that refers to the old one. {@link Journal} is
 * the port that stores and finds them.
 */
package dev.loopgauge.journal;
