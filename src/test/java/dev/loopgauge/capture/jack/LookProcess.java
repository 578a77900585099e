package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.Availability;

/** A process that looks for the audio server once and says on stdout what it found. */
final class LookProcess {
  private LookProcess() {}

  /** Prints one line. */
  public static void main(String[] args) {
    String line =
        new JackBackend().look() instanceof Availability.Unusable unusable
            ? unusable.reason() + " " + unusable.hint()
            : "usable";
    System.out.println(line);
  }
}
