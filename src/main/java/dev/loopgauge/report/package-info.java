/**
 * What a command found out, told twice: as text for a person and as ordered maps for JSON. Each
 * document is a value built from result types; nothing here reads a file, measures or decides.
 * Numbers are plain in every locale and carry no digit beyond their resolution.
 */
package dev.loopgauge.report;
