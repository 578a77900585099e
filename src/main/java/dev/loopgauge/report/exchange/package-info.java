/**
 * Entries of the journal as files that go from one journal to another, or into a spreadsheet: one
 * JSON document, or CSV. Either can hold whatever an entry can, so that nothing is lost going out
 * and back in. What can't be read is refused with its place.
 */
package dev.loopgauge.report.exchange;
