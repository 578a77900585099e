/**
 * The report: what was measured at a show, or stands in documents, as one page for people, and the
 * same as text, CSV and JSON. Each part of the page is a class that is silent where there is
 * nothing to show. The only package that knows the library that writes HTML.
 */
package dev.loopgauge.report.html;
