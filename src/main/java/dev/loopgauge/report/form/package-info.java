/**
 * What all documents share: their head and outcome, the screen's lines and tables, numbers, JSON
 * and CSV. Knows nothing of what a document tells.
 */
package dev.loopgauge.report.form;
