package dev.loopgauge.verify;

import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Finds what a person must know about a series before believing it. */
public final class SeriesNotes {
  /** Readings further off their line than this many standard uncertainties don't lie on one. */
  private static final double TOO_FAR = 3;

  /**
   * A fixed part this many samples below 0 may come of a display that shows tenths of a
   * millisecond: half of one is 2.4 samples at 48 kHz.
   */
  private static final double BELOW_NONE = 3;

  private final SeriesFit fit;
  private final List<SeriesNote> notes = new ArrayList<>();

  private SeriesNotes(SeriesFit fit) {
    this.fit = fit;
  }

  /** All there is to know; empty if the series is sound. */
  public static List<SeriesNote> of(SeriesFit fit) {
    SeriesNotes notes = new SeriesNotes(fit);
    fit.readings().stream().filter(SeriesFit.Fitted::outlier).forEach(notes::outlier);
    notes.agreement();
    notes.blocks();
    notes.fixed();
    return List.copyOf(notes.notes);
  }

  private void outlier(SeriesFit.Fitted odd) {
    double off = odd.laterSamples();
    note(
        "outlier",
        String.format(
            Locale.ROOT,
            "the reading at a block of %d is %s samples (%s ms) too %s, and was left out",
            odd.reading().blockSize(),
            PlainNumber.of(Math.abs(off), 1),
            PlainNumber.of(Math.abs(off) * 1000 / fit.fixed().rate().hertz(), 2),
            off > 0 ? "late" : "early"),
        "Read that one again: was it misread, or the block size not yet in effect?");
  }

  private void agreement() {
    long sizes = fit.agreeing().stream().mapToInt(f -> f.reading().blockSize()).distinct().count();
    if (sizes == 2) {
      note(
          "two-sizes",
          "two block sizes always lie on a line, so a wrong reading can't show",
          "Read a third block size, far from the others.");
    } else if (fit.agreeing().stream().anyMatch(SeriesNotes::isFar)) {
      note(
          "no-line",
          String.format(
              Locale.ROOT,
              "the readings are up to %s samples off a line",
              PlainNumber.of(fit.worstSamples(), 1)),
          "Read each again, and more sizes: then the wrong one shows.");
    }
  }

  private static boolean isFar(SeriesFit.Fitted fitted) {
    return Math.abs(fitted.laterSamples()) > TOO_FAR * fitted.reading().uncertaintySamples();
  }

  private void blocks() {
    if (fit.uncertaintyBlocks() >= 0.5) {
      note(
          "too-close",
          String.format(
              Locale.ROOT,
              "the number of blocks is uncertain by %s: these block sizes are too close together",
              PlainNumber.of(fit.uncertaintyBlocks(), 2)),
          "Read a size that is several times larger.");
    } else if (!fit.isWhole()) {
      note(
          "not-whole",
          String.format(
              Locale.ROOT,
              "%s isn't a whole number of blocks%s",
              PlainNumber.of(fit.blocks(), 3),
              trueRate().map(SeriesNotes::atRate).orElse("")),
          "Was one reading rounded? Is the sample rate the one that the rig ran at?");
    }
  }

  private static String atRate(Ratio ratio) {
    return String.format(
        Locale.ROOT,
        "; it would be %d if the rig ran at %d Hz",
        ratio.blocks(),
        ratio.rate().hertz());
  }

  private record Ratio(SampleRate rate, double exactBlocks) {
    long blocks() {
      return Math.round(exactBlocks);
    }
  }

  /**
   * The nearest usual rate at which the blocks would be whole. A wrong rate stretches the number of
   * blocks by the ratio of the rates; the readings still lie on a line, so nothing else shows it.
   */
  private Optional<Ratio> trueRate() {
    int given = fit.fixed().rate().hertz();
    return SingleChanges.RATES.stream()
        .filter(rate -> rate.hertz() != given)
        .sorted(
            Comparator.comparingDouble(rate -> Math.abs(Math.log((double) rate.hertz() / given))))
        .map(rate -> new Ratio(rate, fit.blocks() * rate.hertz() / given))
        .filter(
            ratio ->
                ratio.blocks() > 0
                    && SeriesFit.isWhole(
                        ratio.exactBlocks(),
                        fit.uncertaintyBlocks() * ratio.rate().hertz() / given))
        .findFirst();
  }

  private void fixed() {
    if (fit.fixed().samples() < -fit.worstSamples() - BELOW_NONE || fit.blocks() < 0) {
      note(
          "impossible",
          String.format(
              Locale.ROOT,
              "no rig has %s blocks and a fixed part of %s samples",
              PlainNumber.of(fit.toldBlocks(), 2),
              PlainNumber.of(fit.fixed().samples(), 1)),
          "Check the readings, their unit and the sample rate.");
    }
  }

  private void note(String code, String text, String hint) {
    notes.add(new SeriesNote(code, text, hint));
  }
}
