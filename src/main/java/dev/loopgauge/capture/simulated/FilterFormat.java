package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.filter.AllPass;
import dev.loopgauge.signal.filter.BandPass;
import dev.loopgauge.signal.filter.Crossover;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.HighPass;
import dev.loopgauge.signal.filter.LowPass;
import dev.loopgauge.signal.filter.Peak;
import dev.loopgauge.signal.filter.Shelf;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Function;

/** How filters are written as faults: corner in Hz, then order, or decibels and quality. */
final class FilterFormat {
  private static final int USUAL_ORDER = 2;
  private static final int USUAL_CROSSOVER_ORDER = 4;
  private static final double USUAL_QUALITY = 1;

  private FilterFormat() {}

  /** An example of each kind, and what reads its value. */
  static Map<String, Function<String, Design>> readers() {
    Map<String, Function<String, Design>> readers = new LinkedHashMap<>();
    readers.put("high-pass=80:4", ordered(HighPass::new, USUAL_ORDER));
    readers.put("low-pass=8000:2", ordered(LowPass::new, USUAL_ORDER));
    readers.put("crossover-low=80:4", crossover(Crossover.Output.LOW));
    readers.put("crossover-high=80:4", crossover(Crossover.Output.HIGH));
    readers.put("crossover-sum=80:4", crossover(Crossover.Output.SUM));
    readers.put("low-shelf=200:-6", shelf(Shelf.Side.LOW));
    readers.put("high-shelf=4000:6", shelf(Shelf.Side.HIGH));
    readers.put("peak=1000:6:2", FilterFormat::peak);
    readers.put("all-pass=1000:2", ordered(AllPass::new, USUAL_ORDER));
    readers.put("telephone", value -> BandPass.TELEPHONE);
    readers.put("subwoofer", value -> BandPass.SUBWOOFER);
    return readers;
  }

  private static Function<String, Design> ordered(
      BiFunction<Double, Integer, Design> design, int usualOrder) {
    return value -> {
      FaultFigures figures = FaultFigures.of(value, 1, 2);
      return design.apply(figures.at(0), figures.whole(1, usualOrder));
    };
  }

  private static Function<String, Design> crossover(Crossover.Output output) {
    return ordered((hertz, order) -> new Crossover(hertz, order, output), USUAL_CROSSOVER_ORDER);
  }

  private static Function<String, Design> shelf(Shelf.Side side) {
    return value -> {
      FaultFigures figures = FaultFigures.of(value, 2, 2);
      return new Shelf(side, figures.at(0), figures.at(1));
    };
  }

  private static Design peak(String value) {
    FaultFigures figures = FaultFigures.of(value, 2, 3);
    return new Peak(figures.at(0), figures.at(1), figures.at(2, USUAL_QUALITY));
  }
}
