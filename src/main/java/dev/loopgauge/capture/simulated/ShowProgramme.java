package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.SampleRate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * What is played and said at a show that nobody has written: a {@link Phrase} begins in each
 * {@value #SLOT_SECONDS} seconds, at a random moment, so that phrases now overlap and now leave a
 * pause. It goes on for as long as it is read, and holds the last {@value #KEPT} phrases only.
 */
final class ShowProgramme implements Sound {
  private static final int SLOT_SECONDS = 4;

  /** How late a phrase begins; with its longest it is over before the slot after the next. */
  private static final double LATEST_SECONDS = 2;

  private static final int KEPT = 6;

  private final SampleRate rate;
  private final long seed;
  private final int slot;
  private final Map<Long, float[]> phrases = new LinkedHashMap<>();

  /** The same seed gives the same programme. */
  ShowProgramme(SampleRate rate, long seed) {
    this.rate = rate;
    this.seed = seed;
    this.slot = SLOT_SECONDS * rate.hertz();
  }

  @Override
  public double[] read(long from, int length) {
    double[] sound = new double[length];
    long first = Math.max(0, Math.floorDiv(from, slot) - 1);
    for (long number = first; number * slot < from + length; number++) {
      add(phrase(number), number * slot - from, sound);
    }
    return sound;
  }

  private static void add(float[] phrase, long at, double[] sound) {
    int start = (int) Math.max(0, at);
    int end = (int) Math.min(sound.length, at + phrase.length);
    for (int i = start; i < end; i++) {
      sound[i] += phrase[(int) (i - at)];
    }
  }

  private float[] phrase(long number) {
    float[] kept = phrases.get(number);
    if (kept == null) {
      if (phrases.size() == KEPT) {
        phrases.remove(phrases.keySet().iterator().next());
      }
      kept = rendered(new SplittableRandom(seed + number * StreamScene.STEP));
      phrases.put(number, kept);
    }
    return kept;
  }

  private float[] rendered(SplittableRandom random) {
    int late = rate.samplesIn(LATEST_SECONDS * random.nextDouble());
    double[] phrase = new Phrase(rate, random).render();
    float[] whole = new float[late + phrase.length];
    for (int i = 0; i < phrase.length; i++) {
      whole[late + i] = (float) phrase[i];
    }
    return whole;
  }
}
