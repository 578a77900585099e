package dev.loopgauge.estimate;

import dev.loopgauge.signal.Signal;
import java.util.function.Function;

/** Returns out of which a careless estimator makes a number. */
@SuppressWarnings("ImmutableEnumChecker") // the makers hold no state
public enum Trap {
  NOISE(s -> s.strangers(s.anything(), s.noise())),
  HUM(s -> s.strangers(s.anything(), s.plus(s.hum(), s.noise().times(0.01)))),
  OTHER_SPEECH(s -> s.strangers(s.speech(), s.speech())),
  OTHER_MUSIC(s -> s.strangers(s.music(), s.music())),
  OTHER_BASS(s -> s.strangers(s.bass(s.music()), s.bass(s.music()))),
  OTHER_APPLAUSE(s -> s.strangers(s.applause(), s.applause())),
  WRONG_CHANNEL(s -> s.strangers(s.anything(), s.programme())),
  WRONG_STIMULUS(s -> s.strangers(s.stimulus(), s.sweepOfAnotherLength())),
  CLAPS_AGAINST_CLICK(s -> s.strangers(s.click(), s.applause())),
  REVERSED(
      s -> {
        Signal speech = s.speech();
        return s.strangers(speech, s.reversed(speech));
      }),
  SAME_HUM_IN_BOTH(
      s -> s.strangers(s.plus(s.speech(), s.mains(3)), s.plus(s.speech(), s.mains(3)))),
  OFFSET_IN_BOTH(
      s -> {
        Signal offset = s.constant(0.1);
        return s.strangers(s.plus(s.speech(), offset), s.plus(s.noise(), offset));
      }),
  BETWEEN_SONGS(s -> s.strangers(s.noise().times(1e-4), s.noise().times(1e-4))),
  TONE(s -> s.later(s.tone(), s.noise().times(0.01))),
  CHORD(s -> s.later(s.plus(s.tone(), s.tone()), s.noise().times(0.01))),
  LOOP(s -> s.later(s.looped(s.music().slice(0, s.rate().samplesIn(0.05))), s.noise())),
  SQUARE(s -> s.square(s.speech())),
  BURIED(s -> s.later(s.stimulus().times(0.05), s.noise())),
  SPEECH_AMONG_MUSIC(s -> s.later(s.speech().times(0.2), s.music()));

  private final Function<Scene, Scene.Evening> maker;

  Trap(Function<Scene, Scene.Evening> maker) {
    this.maker = maker;
  }

  /** What this trap looks like on the evening of a seed. */
  Scene.Evening on(long seed) {
    return maker.apply(new Scene(own(seed)));
  }

  /** The same on a longer evening. */
  Scene.Evening on(long seed, double seconds) {
    return maker.apply(new Scene(own(seed), seconds));
  }

  private long own(long seed) {
    return 31L * name().hashCode() + seed;
  }
}
