/**
 * What a rig is said to cost: stages, paths, pictures and listeners read from a chain file, and the
 * delay budget that follows from them at any sample rate and block size. Pure arithmetic on text
 * that the caller has read: no file, clock or global state. Every error of a chain file names its
 * line and column.
 */
package dev.loopgauge.chain;
