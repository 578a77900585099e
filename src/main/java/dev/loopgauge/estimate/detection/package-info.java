/**
 * Whether what was fitted is the reference, and at one lag only: its significance against unrelated
 * sound, lags that fit as well, clicks mistaken for others, and in words why there is no number.
 */
package dev.loopgauge.estimate.detection;
