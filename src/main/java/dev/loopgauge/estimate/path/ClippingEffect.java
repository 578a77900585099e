package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.integrity.Clipping;
import dev.loopgauge.estimate.integrity.FlatTops;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Spectra;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** Which samples of a return are clipped, told by what a fit makes of its reference. */
public final class ClippingEffect {
  private final Spectra spectra;
  private final Fit fit;
  private final Reading reading;
  private final Explained explained;
  private final BitSet clipped;

  private ClippingEffect(Spectra spectra, Fit fit, Reading reading) {
    this.spectra = spectra;
    this.fit = fit;
    this.reading = reading;
    FlatTops tops = FlatTops.of(Explained.aligned(fit, reading));
    this.explained = tops.isEmpty() ? Explained.NOTHING : Explained.of(spectra, fit, reading);
    this.clipped = tops.isEmpty() ? new BitSet() : tops.against(sent(reading), explained.found());
  }

  private static double[] sent(Reading reading) {
    double[] sent = new double[reading.reference().length()];
    reading.reference().copyTo(0, sent, 0, sent.length);
    return sent;
  }

  /** The most clipped of the readings behind a fit; empty if none is clipped. */
  public static Optional<ClippingEffect> of(Spectra spectra, Fit fit) {
    Optional<ClippingEffect> most = Optional.empty();
    for (Reading reading : spectra.readings()) {
      ClippingEffect test = new ClippingEffect(spectra, fit, reading);
      if (!test.clipped.isEmpty() && (most.isEmpty() || test.share() > most.get().share())) {
        most = Optional.of(test);
      }
    }
    return most;
  }

  /** The share of the return's samples that are clipped. */
  public double share() {
    return (double) clipped.cardinality() / reading.ret().length();
  }

  /** What the clipped samples do to the reading. */
  public Clipping clipping() {
    if (spectra.readings().size() == 1) {
      return new UnclippedFit(spectra, fit, explained, clipped).clipping(share());
    }
    Spectra alone = Spectra.of(List.of(reading), spectra.searchSeconds());
    ClippingEffect own = new ClippingEffect(alone, Fit.of(alone, fit.arrivals()), reading);
    return new UnclippedFit(alone, own.fit, own.explained, own.clipped).clipping(share());
  }
}
