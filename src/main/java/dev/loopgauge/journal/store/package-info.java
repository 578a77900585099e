/**
 * Journals in a database: one SQLite file, or PostgreSQL where a crew with several rigs shares one.
 * Both run the same statements on the same tables; {@link dev.loopgauge.journal.store.Store} holds
 * what differs. The tables are made and brought up to date by Flyway, from the SQL files beside
 * this package, and refuse to be changed: entries are only ever added.
 */
package dev.loopgauge.journal.store;
