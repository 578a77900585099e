package dev.loopgauge.estimate;

import dev.loopgauge.estimate.result.Band;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The octaves of a path, each as the last two windows that told it heard it. One window alone may
 * be far off: where programme ends just after it begins, what little it holds of an octave comes
 * from its edges.
 *
 * @param last each octave as it was last told
 * @param before as it was told before that
 */
record HeardOctaves(List<Band> last, List<Band> before) {
  /** Nothing was heard yet. */
  static final HeardOctaves NONE = new HeardOctaves(List.of(), List.of());

  /** After a window that tells some octaves; the others stay as they were heard before. */
  HeardOctaves then(List<Band> told) {
    List<Band> earlier = new ArrayList<>();
    for (Band band : told) {
      of(band.centreHz(), last).ifPresent(earlier::add);
    }
    return new HeardOctaves(others(told, last), others(earlier, before));
  }

  /** Some octaves, and those of others that are not among them. */
  private static List<Band> others(List<Band> some, List<Band> others) {
    List<Band> all = new ArrayList<>(some);
    others.stream().filter(band -> of(band.centreHz(), some).isEmpty()).forEach(all::add);
    return all;
  }

  private static Optional<Band> of(double centreHz, List<Band> bands) {
    return bands.stream().filter(band -> band.centreHz() == centreHz).findFirst();
  }

  /** Each octave that was told twice, as it was heard fainter. */
  List<Band> fainter() {
    List<Band> fainter = new ArrayList<>();
    for (Band band : last) {
      of(band.centreHz(), before)
          .map(earlier -> earlier.levelDb() < band.levelDb() ? earlier : band)
          .ifPresent(fainter::add);
    }
    return fainter;
  }
}
