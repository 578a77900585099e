/**
 * Delays that change while they are read: one window of a track, the line through many, drift
 * within one reading, and readings that don't show one delay. Where a reading has to be estimated
 * again, a function that does so is handed in.
 */
package dev.loopgauge.estimate.drift;
