/**
 * A return explained as arrivals of its reference through a fitted response, and what that leaves:
 * the residual and its tests, the uncertainty from noise and dispersion, further arrivals, the
 * delay by octave band, the response drawn along the delay axis.
 */
package dev.loopgauge.estimate.path;
