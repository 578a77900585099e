package dev.loopgauge.report.html;

import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.span;

import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.measured.HostCheckRecord;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.SoakDocument;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.report.plot.Lanes.Sign;
import dev.loopgauge.verify.verdict.Judgement;
import j2html.tags.DomContent;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** How readings stand, as a word with a shape and a colour beside it. */
final class Standings {
  /** The worst first; what is not judged comes last. */
  static final List<Judgement> WORST_FIRST =
      List.of(Judgement.BAD, Judgement.UNDECIDED, Judgement.GOOD, Judgement.NOT_JUDGED);

  /** The order of {@link #WORST_FIRST}. */
  static final Comparator<Judgement> ORDER = Comparator.comparing(WORST_FIRST::indexOf);

  private Standings() {}

  /** How a document stands over all that was heard; older ones tell by their outcome. */
  static Judgement of(ReadDocument reading) {
    return verdict(reading)
        .flatMap(VerdictRecord::standing)
        .orElseGet(() -> byOutcome(reading, reading.outcome()));
  }

  /** The verdict that a document holds. */
  static Optional<VerdictRecord> verdict(ReadDocument reading) {
    return reading
        .measured()
        .flatMap(MeasurementDocument::verdict)
        .or(() -> reading.as(TrackDocument.class).flatMap(TrackDocument::verdict))
        .or(() -> reading.as(SoakDocument.class).flatMap(SoakDocument::verdict));
  }

  private static Judgement byOutcome(ReadDocument reading, String outcome) {
    boolean hostFails =
        reading
            .measured()
            .flatMap(MeasurementDocument::hostCheck)
            .flatMap(HostCheckRecord::agrees)
            .filter(agrees -> !agrees)
            .isPresent();
    if (hostFails) {
      return Judgement.BAD;
    }
    return switch (outcome) {
      case "within-budget", "clean" -> Judgement.GOOD;
      case "outside-budget", "not-clean" -> Judgement.BAD;
      case "undecided", "not-trustworthy", "error" -> Judgement.UNDECIDED;
      default -> Judgement.NOT_JUDGED;
    };
  }

  /** The word: {@code not good}. */
  static String word(Judgement judgement) {
    return switch (judgement) {
      case BAD -> "not good";
      case UNDECIDED -> "undecided";
      case GOOD -> "good";
      case NOT_JUDGED -> "not judged";
    };
  }

  /** Its shape in the picture. */
  static Sign sign(Judgement judgement) {
    return switch (judgement) {
      case BAD -> Sign.BAD;
      case UNDECIDED -> Sign.UNDECIDED;
      case GOOD -> Sign.GOOD;
      case NOT_JUDGED -> Sign.NOT_JUDGED;
    };
  }

  /** Shape and word. The shape says nothing more than the word, so it is silent when read aloud. */
  static DomContent mark(Judgement judgement) {
    return span(rawHtml(shape(judgement)), span(word(judgement)))
        .withClass("mark " + judgement.label());
  }

  private static String shape(Judgement judgement) {
    String drawn =
        switch (judgement) {
          case BAD -> "<path d='M8 1.5 15 14H1Z'/>";
          case UNDECIDED -> "<path d='M8 .5 15.5 8 8 15.5 .5 8Z'/>";
          case GOOD -> "<circle cx='8' cy='8' r='6.5'/>";
          case NOT_JUDGED -> "<path d='M8 1.5a6.5 6.5 0 1 0 .01 0Zm0 2.5a4 4 0 1 1-.01 0Z'/>";
        };
    return "<svg viewBox='0 0 16 16' aria-hidden='true'>" + drawn + "</svg>";
  }
}
