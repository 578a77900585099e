package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What one return hears of a programme that goes out on every send. */
final class HeardProgramme implements Sound {
  private final Epochs epochs;
  private final Map<Epoch, List<Sound>> ways = new LinkedHashMap<>();

  private HeardProgramme(
      int channel, Epochs epochs, Sound programme, int cardSamples, StreamScene scene) {
    this.epochs = epochs;
    for (Epoch epoch : epochs.all()) {
      List<Sound> into = new ArrayList<>();
      for (Way way : epoch.wiring().into(channel)) {
        into.add(way.over(programme, cardSamples, scene.apart(into.size())));
      }
      ways.put(epoch, into);
    }
  }

  /** The same as the card records it. */
  static Sound of(
      int channel, Epochs epochs, Sound programme, int cardSamples, SampleRate rate, long seed) {
    StreamScene card = new StreamScene(rate, 1, 0, seed).apart(channel);
    Sound sum = new HeardProgramme(channel, epochs, programme, cardSamples, card);
    return new Converter().over(new Noise(SimulatedSession.FLOOR_DBFS).over(sum, card), card);
  }

  @Override
  public double[] read(long from, int length) {
    double[] heard = new double[length];
    for (Epoch epoch : epochs.during(from, from + length)) {
      int start = (int) (Math.max(epoch.from(), from) - from);
      int end = (int) (Math.min(epoch.to(), from + length) - from);
      for (Sound way : ways.get(epoch)) {
        double[] part = way.read(from + start, end - start);
        for (int i = 0; i < part.length; i++) {
          heard[start + i] += part[i];
        }
      }
    }
    return heard;
  }
}
