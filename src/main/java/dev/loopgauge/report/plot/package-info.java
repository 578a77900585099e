/**
 * Plots as SVG, drawn by JFreeChart: values in, one {@code <svg>} element out. Each is drawn for a
 * phone and for a page, with colours as CSS custom properties, so that the page decides on light
 * and dark. The only package that knows the plotting library.
 */
package dev.loopgauge.report.plot;
