package dev.loopgauge.capture.simulated;

/** Something that is wrong with the simulated rig, so that one can see what a measurement says. */
public sealed interface Fault permits ChainFault, SoundFault, CardFault {
  /**
   * The fault written as the {@code --fault} option takes it, such as {@code block-size=128} or
   * {@code inverted}.
   *
   * @throws FaultFormatException when there is no fault of that name, or its value is missing, no
   *     number or out of range
   */
  static Fault parse(String text) {
    return FaultFormat.parse(text);
  }
}
