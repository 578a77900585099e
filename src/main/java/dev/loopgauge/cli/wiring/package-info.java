/** The one place that makes audio adapters. */
package dev.loopgauge.cli.wiring;
