package dev.loopgauge.architecture.planted.ring;

/** One half of a planted knot within a room. */
public record Left(Right other) {}
