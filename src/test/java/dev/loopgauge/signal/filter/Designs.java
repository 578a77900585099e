package dev.loopgauge.signal.filter;

import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Filters of every kind, as tests want them. */
public final class Designs {
  public static final SampleRate RATE = new SampleRate(48_000);

  private Designs() {}

  public static List<Design> all() {
    List<Design> all = new ArrayList<>();
    IntStream.rangeClosed(1, 4).forEach(order -> all.add(new HighPass(300, order)));
    IntStream.rangeClosed(1, 4).forEach(order -> all.add(new LowPass(8000, order)));
    for (Crossover.Output output : Crossover.Output.values()) {
      all.add(new Crossover(500, 2, output));
      all.add(new Crossover(500, 4, output));
    }
    all.add(new Shelf(Shelf.Side.LOW, 200, -6));
    all.add(new Shelf(Shelf.Side.HIGH, 4000, 9));
    all.add(new Peak(1000, 6, 2));
    all.add(new Peak(3000, -12, 0.7));
    all.add(new AllPass(1000, 1));
    all.add(new AllPass(1000, 2));
    all.add(BandPass.TELEPHONE);
    all.add(BandPass.SUBWOOFER);
    return all;
  }

  /** The level in dB at a frequency, at 48 kHz. */
  static double levelDb(Design design, double hertz) {
    return 20 * Math.log10(response(design, hertz).magnitude());
  }

  static Complex response(Design design, double hertz) {
    return design.at(RATE).response(hertz / RATE.hertz());
  }

  /** The group delay in samples at a frequency, at 48 kHz. */
  static double groupDelay(Design design, double hertz) {
    return design.at(RATE).groupDelay(hertz / RATE.hertz());
  }
}
