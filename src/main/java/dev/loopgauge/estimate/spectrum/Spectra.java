package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The correlations of some readings of one path, each by itself and all together. */
public final class Spectra {
  /**
   * A reference that is cut out of sound loses at most this share of its length on either side, or
   * the filter's reach.
   */
  private static final double MOST_LOST = 0.05;

  /** How far a fitted filter reaches either way, as a part of a short block. */
  private static final int REACH_PER_BLOCK = 16;

  private final List<Reading> readings;
  private final Transforms transforms;
  private final int searchLag;
  private final int reach;
  private final List<CrossSpectrum> each;
  private final CrossSpectrum cross;
  private final CrossSpectrum auto;
  private final int exact;
  private final double referenceEnergy;
  private final double origin;
  private final PartialOverlap overlap;
  private Optional<double[]> lags = Optional.empty();
  private Optional<FittedArrival> strongest = Optional.empty();

  private Spectra(
      List<Reading> readings,
      Transforms transforms,
      int searchLag,
      int reach,
      List<CrossSpectrum> each,
      CrossSpectrum cross,
      CrossSpectrum auto,
      int exact) {
    this.readings = List.copyOf(readings);
    this.transforms = transforms;
    this.searchLag = searchLag;
    this.reach = reach;
    this.each = each;
    this.cross = cross;
    this.auto = auto;
    this.exact = exact;
    this.referenceEnergy = auto.at(0).value();
    this.overlap = new PartialOverlap(readings, referenceEnergy);
    this.origin = goesOn(readings) ? PeakSearch.refine(auto, 0).lag() : 0;
  }

  /** Correlates some readings, all at one rate. */
  public static Spectra of(List<Reading> readings, double maxDelaySeconds) {
    return of(readings, maxDelaySeconds, Optional.empty());
  }

  /**
   * The same with what may be known of the references.
   *
   * @param kept where their transforms are kept
   */
  public static Spectra of(
      List<Reading> readings, double maxDelaySeconds, Optional<KeptTransforms> kept) {
    return of(readings, maxDelaySeconds, reach(readings.get(0).rate()), kept);
  }

  /**
   * The same for a path of few frequencies, which spreads sound further.
   *
   * @param reach how far a fitted filter reaches either way, in samples
   */
  public static Spectra of(List<Reading> readings, double maxDelaySeconds, int reach) {
    return of(readings, maxDelaySeconds, reach, Optional.empty());
  }

  private static Spectra of(
      List<Reading> readings, double maxDelaySeconds, int reach, Optional<KeptTransforms> kept) {
    SampleRate rate = readings.get(0).rate();
    int searchLag = rate.samplesIn(maxDelaySeconds);
    int shortBlock = ShortBlocks.lengthAt(rate);
    int margin = Math.max(searchLag, shortBlock) + 2 * reach;
    BlockPlan plan = BlockPlan.of(longestReference(readings), margin, shortBlock);
    Transforms transforms = kept.isPresent() ? kept.get().transforms() : new Transforms();
    RealFft fft = transforms.ofLength(plan.transform());
    Optional<CrossSpectrum> known =
        kept.isPresent() ? kept.get().auto(readings, plan) : Optional.empty();
    List<Correlating.Part> parts =
        new Correlating(readings, plan, fft, kept, known.isEmpty()).parts();
    List<CrossSpectrum> each = Correlating.each(parts, readings.size());
    CrossSpectrum auto = known.isPresent() ? known.get() : Correlating.auto(parts);
    if (kept.isPresent()) {
      kept.get().keepAuto(readings, plan, auto);
    }
    return new Spectra(
        readings,
        transforms,
        searchLag,
        reach,
        each,
        CrossSpectrum.sum(each),
        auto,
        Integer.MAX_VALUE);
  }

  private static boolean goesOn(List<Reading> readings) {
    for (Reading reading : readings) {
      if (reading.goesOn()) {
        return true;
      }
    }
    return false;
  }

  /** The readings cut to what was recorded of an arrival. */
  public PartialOverlap.Cut recordedOf(FittedArrival arrival) {
    return overlap.cutTo(arrival, cutMargin());
  }

  private int cutMargin() {
    return Math.max(reach(), Math.min(searchLag, (int) (MOST_LOST * longestReference())));
  }

  /** The same of readings cut to the strongest arrival: what was cut off is taken off the sums. */
  public Spectra ofParts(List<Reading> cut) {
    BlockPlan plan = cross.plan();
    List<CrossSpectrum> rest = new ArrayList<>(each);
    CrossSpectrum restOfAuto = auto;
    for (int i = 0; i < cut.size(); i++) {
      for (Reading off : PartialOverlap.cutOff(readings.get(i), cut.get(i))) {
        List<Correlating.Part> parts =
            new Correlating(List.of(off), plan, cross.fft(), Optional.empty(), true).parts();
        rest.set(i, rest.get(i).less(Correlating.each(parts, 1).get(0)));
        restOfAuto = restOfAuto.less(Correlating.auto(parts));
      }
    }
    Spectra parts =
        new Spectra(
            cut,
            transforms,
            searchLag,
            reach,
            rest,
            CrossSpectrum.sum(rest),
            restOfAuto,
            cutMargin());
    parts.strongest = parts.unrivalled(strongest());
    return parts;
  }

  /**
   * The arrival that the readings were cut to; empty where another could be stronger in what is
   * left of them. Of those near it all was recorded, the others may count for a little more.
   */
  private Optional<FittedArrival> unrivalled(FittedArrival arrival) {
    CrossSpectrum.Point peak = PeakSearch.refine(cross, arrival.lag());
    double[] all = searched(cross);
    int here = searchedIndex(arrival.lag());
    int from = Math.max(0, here - exact);
    int to = Math.min(all.length, here + exact + 1);
    double near = PeakSearch.most(all, from, to);
    double far = Math.max(PeakSearch.most(all, 0, from), PeakSearch.most(all, to, all.length));
    double most = Math.max(near, PartialOverlap.MOST_RAISED * far);
    return most > Math.max(Math.abs(all[here]), Math.abs(peak.value()))
        ? Optional.empty()
        : Optional.of(arrival(peak));
  }

  /** The readings. */
  public List<Reading> readings() {
    return readings;
  }

  /** What the correlations were made with. */
  public Transforms transforms() {
    return transforms;
  }

  /** How far a delay is looked for either way, in samples. */
  public int searchLag() {
    return searchLag;
  }

  /** The correlation of each reading. */
  public List<CrossSpectrum> each() {
    return each;
  }

  /** The sum of them. */
  public CrossSpectrum cross() {
    return cross;
  }

  /** The sum of the references' correlations with themselves. */
  public CrossSpectrum auto() {
    return auto;
  }

  /**
   * How far from the delay what lies beyond a cut edge of a reference is known, in samples; further
   * off the correlation may show arrivals that aren't there.
   */
  public int exact() {
    return exact;
  }

  /** The rate of the readings. */
  public SampleRate rate() {
    return readings.get(0).rate();
  }

  /** How far a delay is looked for either way, in seconds. */
  public double searchSeconds() {
    return (double) searchLag / rate().hertz();
  }

  /** How many samples the longest reference has. */
  public int longestReference() {
    return longestReference(readings);
  }

  private static int longestReference(List<Reading> readings) {
    int longest = 0;
    for (Reading reading : readings) {
      longest = Math.max(longest, reading.reference().length());
    }
    return longest;
  }

  /** How far a fitted filter reaches either way, in samples. */
  public int reach() {
    return reach;
  }

  private static int reach(SampleRate rate) {
    return ShortBlocks.lengthAt(rate) / REACH_PER_BLOCK;
  }

  /** The energy of all references. */
  public double referenceEnergy() {
    return referenceEnergy;
  }

  /**
   * A correlation at the whole lags that are searched; index searchLag is lag 0. That of the sum is
   * kept, and not to be changed.
   */
  public double[] searched(CrossSpectrum correlation) {
    if (correlation != cross) {
      return lagsOf(correlation);
    }
    if (lags.isEmpty()) {
      lags = Optional.of(lagsOf(cross));
    }
    return lags.get();
  }

  /**
   * A correlation at the same lags, each as it would be had all of its arrival been recorded, and
   * been as alike as what was.
   */
  public double[] completed(CrossSpectrum correlation) {
    double[] completed = lagsOf(correlation);
    overlap.complete(completed, -searchLag);
    return completed;
  }

  /** The index of the searched lag nearest to a lag, which may lie just beyond the last. */
  public int searchedIndex(double lag) {
    int index = (int) Math.rint(lag) + searchLag;
    return Math.max(0, Math.min(index, 2 * searchLag));
  }

  private double[] lagsOf(CrossSpectrum correlation) {
    return correlation.lagsFrom(-searchLag, 2 * searchLag + 1);
  }

  /** The strongest arrival in all readings. */
  public FittedArrival strongest() {
    if (strongest.isEmpty()) {
      strongest = Optional.of(strongest(cross));
    }
    return strongest.get();
  }

  /**
   * The strongest arrival in a correlation. Of an arrival that the recording starts or ends within
   * only a part is there to correlate, which must not count against its lag ({@link
   * PartialOverlap}).
   */
  public FittedArrival strongest(CrossSpectrum correlation) {
    HalfLags lags = new HalfLags(searched(correlation), correlation, -searchLag);
    int near = overlap.strongest(lags.heights(), -searchLag);
    return arrival(PeakSearch.refine(correlation, lags.highestNear(near)));
  }

  /**
   * The arrival that a peak of a correlation of all readings stands for. Its delay counts from
   * where the references' own correlation peaks: not at 0, but half of what x^2 gains from edge to
   * edge over the sum of (dx/dn)^2 beside it (derived), where they are cut out of sound that goes
   * on.
   */
  public FittedArrival arrival(CrossSpectrum.Point peak) {
    return new FittedArrival(peak.lag() - origin, peak.value() / referenceEnergy);
  }
}
