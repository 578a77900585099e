/**
 * One live measurement, from a plan to an estimate: what is played and when, how the returns are
 * cut into readings, how the sound card's own delay is kept out, and what happened meanwhile. Also
 * the calibration with a patch cable and the check of a fresh patching. It plays through the port
 * in {@code capture} and touches neither files nor the console.
 */
package dev.loopgauge.measure;
