/**
 * Transforms, and correlations of readings block by block: cross-spectra, their peaks, what a cut
 * or partly recorded reference does to them, and linear systems. Alone knows the library that does
 * the Fourier transform. Says where two signals are alike, not whether that is a path.
 */
package dev.loopgauge.estimate.spectrum;
