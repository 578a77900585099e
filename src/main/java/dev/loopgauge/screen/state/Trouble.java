package dev.loopgauge.screen.state;

/** What is wrong and what to try. */
public record Trouble(String text, String hint) {}
