package dev.loopgauge.capture.simulated;

/** A fault that can be heard: it changes what return 2 records. */
sealed interface SoundFault extends Fault, Effect
    permits BandLimit,
        Drift,
        Dropout,
        Feedback,
        Gain,
        Hum,
        Inverted,
        LostBlock,
        Noise,
        Overload,
        SecondArrival,
        Silent,
        WrongSignal {}
