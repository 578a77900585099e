package dev.loopgauge.measure;

import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Polarity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the reference, read against what was played, says of everything between the program and the
 * cable: a straight cable changes nothing, so what is changed a layer of the system has changed.
 *
 * @param reference where the cable is
 * @param levelDbfs the peak that was played
 */
record ReferenceCheck(ChannelPair reference, double levelDbfs) {
  /**
   * By how many dB an octave of a reference may differ from its middle octave. Converters are flat
   * within a few tenths, and a coupling capacitor at 10 Hz takes 0.4 dB from 31.5 Hz; whoever sets
   * an equaliser turns it by more. (Common practice, no source.)
   */
  private static final double FLAT_DB = 1.5;

  /** All that must be told. */
  List<Finding> of(Estimate.Found found) {
    List<Finding> told = new ArrayList<>();
    if (found.measurement().polarity() == Polarity.INVERTED) {
      told.add(LiveFindings.invertedReference(reference));
    }
    if (found.findings().stream().anyMatch(f -> f.code() == FindingCode.CLIPPED)) {
      told.add(clipped());
    }
    uneven(found.measurement().bands()).ifPresent(told::add);
    return told;
  }

  private Finding clipped() {
    return Finding.told(
        FindingCode.CLIPPED,
        String.format(
            Locale.ROOT,
            "the reference on return %d is clipped, though send %d plays at %.0f dBFS only",
            reference.ret(),
            reference.send(),
            levelDbfs),
        "turn down the gain of that return, and switch off what the system adds to the sound");
  }

  private Optional<Finding> uneven(List<Band> bands) {
    List<Double> levels = bands.stream().map(Band::levelDb).sorted().toList();
    if (levels.isEmpty()) {
      return Optional.empty();
    }
    double middle = levels.get(levels.size() / 2);
    return bands.stream()
        .filter(band -> off(band, middle) > FLAT_DB + band.levelUncertaintyDb())
        .max(Comparator.comparingDouble(band -> off(band, middle)))
        .map(band -> uneven(band, band.levelDb() - middle));
  }

  private static double off(Band band, double middle) {
    return Math.abs(band.levelDb() - middle);
  }

  private Finding uneven(Band band, double db) {
    return Finding.told(
        FindingCode.DISPERSIVE,
        String.format(
            Locale.ROOT,
            "the reference on return %d is no straight cable: around %.0f Hz it is %.1f dB %s than"
                + " elsewhere",
            reference.ret(),
            band.centreHz(),
            Math.abs(db),
            db > 0 ? "louder" : "quieter"),
        "switch off the system's sound effects and the desk's equaliser in that channel; a converter"
            + " of sample rates may be in the way too");
  }
}
