package dev.loopgauge.capture.simulated;

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
        Skew,
        Stutters,
        WrongSignal,
        WrongSpeed {}
