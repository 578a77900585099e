/**
 * What the screen shows: one record, made of the documents of the jobs, with all its words and
 * figures ready. A browser only sets them in place, so that every one shows the same.
 */
package dev.loopgauge.screen.state;
