/**
 * From windows of sound that goes by to events that start and end once each: a step, a drift, sound
 * lost, polarity or level that changed, two groups of delays, a reference that is silent. Pure:
 * time comes with the windows.
 */
package dev.loopgauge.verify.watch;
