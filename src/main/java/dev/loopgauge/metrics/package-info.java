/**
 * What a watch reads, as OpenMetrics text for a program that collects figures; it alone knows
 * Prometheus' client library.
 */
package dev.loopgauge.metrics;
