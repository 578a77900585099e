/**
 * Statistics that more than one room needs: straight lines with their degrees of freedom, a test
 * whether a slope is there, medians and robust scatter, trends, change points, and the quantiles of
 * Student's t and chi-square. Only the quantiles use a library (Apache Commons Statistics); its
 * classes are loaded when a quantile is asked for, so that commands without one start no slower.
 */
package dev.loopgauge.stats;
