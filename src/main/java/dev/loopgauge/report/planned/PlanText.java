package dev.loopgauge.report.planned;

import dev.loopgauge.chain.Host;
import dev.loopgauge.plan.Breach;
import dev.loopgauge.plan.Choice;
import dev.loopgauge.plan.DelaySource;
import dev.loopgauge.plan.Feed;
import dev.loopgauge.plan.Plan;
import dev.loopgauge.plan.PlanRequest;
import dev.loopgauge.plan.Routing;
import dev.loopgauge.plan.Setting;
import dev.loopgauge.report.budget.Pictures;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.signal.SampleRate;
import java.util.stream.Collectors;

/** The plan as text: the choice first, then what limits it, then the other choices. */
final class PlanText {
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
      new PlanTable(document).lines().forEach(sheet::asIs);
      more();
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
            () -> sheet.row("one step up", nothingBreaks(choice.setting())));
    routings(choice);
    choice.feeds().forEach(feed -> picture(choice.setting(), feed));
    sources(choice);
  }

  private String nothingBreaks(Setting chosen) {
    return request.blockSizes().stream().anyMatch(size -> size > chosen.blockSize())
        ? "no limit breaks, but sound dropped out there"
        : "no larger block was asked about";
  }

  private void routings(Choice choice) {
    String moved =
        choice.feeds().stream()
            .filter(feed -> feed.routing() == Routing.BEFORE_HOST)
            .map(feed -> feed.path() + " (then " + ms(feed.delay().delay().ms()) + ")")
            .collect(Collectors.joining(", "));
    if (!moved.isEmpty()) {
      sheet.row("re-patch", "from before the host, by a second patch of the input: " + moved);
    }
  }

  private void picture(Setting setting, Feed feed) {
    feed.picture()
        .ifPresent(
            match -> {
              sheet.row(
                  "picture",
                  feed.path() + ": " + Pictures.standing(match) + "; " + Pictures.advice(match));
              document.closest(setting, feed).ifPresent(b -> sheet.row("", Pictures.closest(b)));
            });
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

  private void more() {
    int hidden = plan.choices().size() - PlanTable.MOST_ROWS;
    if (hidden > 0) {
      sheet.line("  and " + hidden + " more; --json lists all");
    }
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
    return "block " + setting.blockSize() + " at " + PlanTable.kilohertz(setting.rate()) + " kHz";
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
