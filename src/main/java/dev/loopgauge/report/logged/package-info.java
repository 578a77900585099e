/** Documents of the journal: entries, lists, history, and before against after. */
package dev.loopgauge.report.logged;
