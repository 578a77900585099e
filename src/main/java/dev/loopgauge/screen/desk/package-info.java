/**
 * The desk behind the screen: runs one job at a time on a thread of its own, hears what it says,
 * and puts what it comes to on the board that every browser reads. Knows nothing of HTTP.
 */
package dev.loopgauge.screen.desk;
