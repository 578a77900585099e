package dev.loopgauge.report.patch;

/**
 * Why a patch can't be measured by.
 *
 * @param text what is wrong: part of a sentence
 * @param hint what to try
 */
public record TroubleRecord(String text, String hint) {}
