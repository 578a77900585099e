package dev.loopgauge.capture;

/**
 * How far a device's rate is from the one that it states, by the clock of this computer.
 *
 * @param ppm positive when more frames come than stated, in parts per million
 * @param uncertaintyPpm the expanded uncertainty of that (about 95 %), in parts per million
 */
public record DeviceRate(double ppm, double uncertaintyPpm) {}
