/**
 * Checks against programs and sounds that others made: {@link dev.loopgauge.outside.NeedsTool} says
 * what a test needs and what happens where it is missing, {@link dev.loopgauge.outside.Tool} runs
 * it.
 */
package dev.loopgauge.outside;
