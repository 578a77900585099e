package dev.loopgauge.architecture.planted.family;

/** Names its child only as what it permits. */
public sealed interface Parent permits Child {}
