/**
 * Compares what was measured with what the chain budget predicts, and says what would explain a
 * difference. Pure arithmetic on the results of {@code estimate} and {@code chain}.
 */
package dev.loopgauge.verify;
