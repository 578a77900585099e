/** The document of a block series: how many blocks, and how much fixed, a host costs. */
package dev.loopgauge.report.series;
