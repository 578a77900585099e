package dev.loopgauge.report.planned;

import dev.loopgauge.plan.Choice;
import dev.loopgauge.plan.Feed;
import dev.loopgauge.plan.Load;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.signal.SampleRate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The best choices of a plan, one line each; columns about which nothing is known are left out. */
final class PlanTable {
  /** How many choices are shown. */
  static final int MOST_ROWS = 12;

  private final PlanDocument document;

  PlanTable(PlanDocument document) {
    this.document = document;
  }

  /** The header and the lines. */
  List<String> lines() {
    List<Choice> choices = document.plan().choices();
    Table<Choice> table =
        new Table<Choice>()
            .figures("block", choice -> String.valueOf(choice.setting().blockSize()))
            .figures("kHz", choice -> kilohertz(choice.setting().rate()))
            .figures("ms a block", choice -> Numbers.plain(choice.setting().blockMs(), 2));
    if (choices.stream().anyMatch(choice -> cpu(choice).isPresent())) {
      table.figures("CPU %", choice -> figure(cpu(choice)));
    }
    table
        .figures("spare ms", choice -> figure(tightest(choice).map(f -> f.marginMs().orElse(0))))
        .words("on", choice -> tightest(choice).map(Feed::path).orElse("-"));
    if (choices.stream().anyMatch(PlanTable::hasPicture)) {
      table.figures("off picture", choice -> Numbers.plain(choice.pictureApartMs(), 1));
    }
    table.figures("re-patched", choice -> String.valueOf(choice.beforeHost().size()));
    return table.lines(choices.subList(0, Math.min(MOST_ROWS, choices.size())));
  }

  /** A sample rate as people say it, without its unit. */
  static String kilohertz(SampleRate rate) {
    return Numbers.brief(rate.hertz() / 1000.0, 3);
  }

  private static boolean hasPicture(Choice choice) {
    return choice.feeds().stream().anyMatch(feed -> feed.picture().isPresent());
  }

  private Optional<Double> cpu(Choice choice) {
    return document
        .load(choice.setting())
        .map(Load::cpuPercent)
        .filter(OptionalDouble::isPresent)
        .map(OptionalDouble::getAsDouble);
  }

  private static Optional<Feed> tightest(Choice choice) {
    return choice.feeds().stream()
        .filter(feed -> feed.marginMs().isPresent())
        .min(Comparator.comparingDouble(feed -> feed.marginMs().orElseThrow()));
  }

  private static String figure(Optional<Double> number) {
    return number.map(known -> Numbers.plain(known, 1)).orElse("-");
  }
}
