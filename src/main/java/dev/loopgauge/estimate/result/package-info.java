/**
 * What an estimate says: the delay, its uncertainty and polarity, arrivals, octave bands, lost
 * sound, clock drift, the points and steps of a track; or why there is no number. Plain values
 * without arithmetic of signals, with the codes and texts of findings.
 */
package dev.loopgauge.estimate.result;
