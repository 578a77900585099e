/** Documents of the patch: which return hears which send, and the patch sheet of a chain file. */
package dev.loopgauge.report.patch;
