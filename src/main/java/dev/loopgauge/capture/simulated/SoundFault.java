package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.SampleRate;

/** A fault that can be heard: it changes what the return records. */
sealed interface SoundFault extends Fault, SoundEffect
    permits BandLimit,
        Chorus,
        ClockFault,
        Compressor,
        Dropout,
        Feedback,
        Filtered,
        Gain,
        Hum,
        Inverted,
        LostBlock,
        Noise,
        Overload,
        SecondArrival,
        Silent,
        Since,
        Skew,
        Stutters,
        WrongSignal,
        WrongSpeed {
  /**
   * Refuses a fault that a sample rate is too low for.
   *
   * @throws FaultFormatException when it is
   */
  default void checkAt(SampleRate rate) {}
}
