package dev.loopgauge.report;

import dev.loopgauge.chain.Host;
import dev.loopgauge.plan.Breach;
import dev.loopgauge.plan.Choice;
import dev.loopgauge.plan.DelaySource;
import dev.loopgauge.plan.Feed;
import dev.loopgauge.plan.Load;
import dev.loopgauge.plan.PictureBlock;
import dev.loopgauge.plan.Plan;
import dev.loopgauge.plan.PlanRequest;
import dev.loopgauge.plan.Routing;
import dev.loopgauge.plan.Setting;
import dev.loopgauge.signal.SampleRate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The plan as text: the choice first, then what limits it, then the other choices. */
final class PlanText {
  private static final int MOST_ROWS = 12;

  private final Sheet sheet = new Sheet();
  private final PlanDocument document;
  private final PlanRequest request;
  private final Plan plan;

  PlanText(PlanDocument document) {
    this.document = document;
    request = document.request();
    plan = document.plan();
    if (plan.choices().isEmpty()) {
      nothingFits();
    } else {
      choice(plan.choices().get(0));
      sheet.gap();
      table();
    }
    droppedOut();
  }

  private void nothingFits() {
    sheet.line("NOTHING FITS: no setting keeps every listener within limits.");
    plan.limit()
        .ifPresent(
            breach -> {
              sheet.row("nearest", setting(breach.setting()) + ": " + words(breach));
              sheet.row("rule", breach.rule());
              sheet.row("try", remedy(breach));
            });
  }

  private String remedy(Breach breach) {
    String shorten = "take stages out of " + breach.path();
    if (breach.kind() == Breach.Kind.PICTURE) {
      return "delay the picture, or " + shorten;
    }
    boolean couldLeave =
        !request.mayLeaveHost().contains(breach.path())
            && !Host.on(request.chain(), request.chain().path(breach.path())).inside().isEmpty();
    return couldLeave
        ? shorten + ", or --may-leave-host " + breach.path() + " where it can do without"
        : shorten;
  }

  private void choice(Choice choice) {
    sheet.line("CHOOSE " + setting(choice.setting()) + ": every listener is within limits.");
    ownRate(choice.setting().rate());
    plan.limit()
        .ifPresentOrElse(
            breach -> {
              sheet.row(
                  "one step up", "block " + breach.setting().blockSize() + ": " + words(breach));
              sheet.row("rule", breach.rule());
            },
            () -> sheet.row("one step up", "no larger block was asked about"));
    choice.feeds().forEach(this::routing);
    choice.feeds().forEach(feed -> picture(choice.setting(), feed));
    sources(choice);
  }

  private void routing(Feed feed) {
    if (feed.routing() == Routing.BEFORE_HOST) {
      sheet.row(
          "re-patch",
          feed.path()
              + ": take it from before the host (a second patch of the same input): "
              + ms(feed.delay().delay().ms()));
    }
  }

  private void picture(Setting setting, Feed feed) {
    feed.picture()
        .ifPresent(
            match -> {
              sheet.row(
                  "picture",
                  feed.path() + ": " + Pictures.standing(match) + "; " + Pictures.advice(match));
              closest(setting, feed).ifPresent(b -> sheet.row("", Pictures.closest(b)));
            });
  }

  private Optional<PictureBlock> closest(Setting setting, Feed feed) {
    return feed.routing() == Routing.BEFORE_HOST
        ? Optional.empty()
        : PictureBlock.closest(
            request.chain().withSampleRate(setting.rate()),
            request.chain().path(feed.path()),
            request.delays(),
            request.rule(),
            request.blockSizes());
  }

  private void sources(Choice choice) {
    String measured =
        choice.feeds().stream()
            .filter(feed -> feed.delay().source() == DelaySource.MEASURED)
            .map(Feed::path)
            .collect(Collectors.joining(", "));
    sheet.row("measured", measured.isEmpty() ? "nothing; all is predicted" : measured);
  }

  private void ownRate(SampleRate chosen) {
    SampleRate own = request.chain().rate();
    if (!chosen.equals(own)) {
      plan.choices().stream()
          .map(Choice::setting)
          .filter(setting -> setting.rate().equals(own))
          .findFirst()
          .ifPresent(
              setting ->
                  sheet.row(
                      "same clock",
                      setting(setting) + " is the best that leaves the sample rate alone"));
    }
  }

  private void table() {
    List<Choice> choices = plan.choices();
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
    if (choices.stream().anyMatch(c -> c.feeds().stream().anyMatch(f -> f.picture().isPresent()))) {
      table.figures("off picture", choice -> Numbers.plain(choice.pictureApartMs(), 1));
    }
    table.figures("re-patched", choice -> String.valueOf(choice.beforeHost().size()));
    table.lines(choices.subList(0, Math.min(MOST_ROWS, choices.size()))).forEach(sheet::asIs);
    if (choices.size() > MOST_ROWS) {
      sheet.line("  and " + (choices.size() - MOST_ROWS) + " more; --json lists all");
    }
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

  private void droppedOut() {
    if (!plan.droppedOut().isEmpty()) {
      sheet.row(
          "left out",
          plan.droppedOut().stream().map(PlanText::setting).collect(Collectors.joining(", "))
              + ": sound dropped out there when it was measured");
    }
  }

  private static String words(Breach breach) {
    String reached =
        switch (breach.kind()) {
          case LISTENER -> " would be " + ms(breach.reachedMs()) + " late, ";
          case PICTURE -> " would be " + ms(breach.reachedMs()) + " behind its picture, ";
        };
    return breach.path() + reached + over(breach);
  }

  private static String over(Breach breach) {
    return Numbers.plainUp(breach.overMs(), 1)
        + " ms over its limit of "
        + Numbers.brief(breach.limitMs(), 2)
        + " ms";
  }

  private static String setting(Setting setting) {
    return "block " + setting.blockSize() + " at " + kilohertz(setting.rate()) + " kHz";
  }

  private static String kilohertz(SampleRate rate) {
    return Numbers.brief(rate.hertz() / 1000.0, 3);
  }

  private static String ms(double ms) {
    return Numbers.plain(ms, 1) + " ms";
  }

  /** All of it. */
  @Override
  public String toString() {
    return sheet.toString();
  }
}
