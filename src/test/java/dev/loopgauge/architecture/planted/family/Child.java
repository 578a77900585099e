package dev.loopgauge.architecture.planted.family;

/** The only child of a planted family. */
public record Child() implements Parent {}
