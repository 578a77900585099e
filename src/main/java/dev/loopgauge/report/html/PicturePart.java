package dev.loopgauge.report.html;

import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.report.budget.PictureRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.plot.Bars;
import dev.loopgauge.report.plot.Bars.Bar;
import dev.loopgauge.report.plot.Bars.Kind;
import dev.loopgauge.report.plot.Bars.Mark;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Sound against picture: how early each path's sound is, and what the rule allows. */
final class PicturePart {
  private final List<Bar> bars = new ArrayList<>();
  private final List<Mark> marks = new ArrayList<>();
  private final Set<PictureRule> rules = new LinkedHashSet<>();
  private final Grid grid =
      new Grid("Sound against picture", "Path", "Advice", "sound early, ms").words(2);

  private PicturePart(List<PathRecord> paths, List<PathStory> stories) {
    paths.forEach(path -> path.picture().ifPresent(p -> path(path.name(), p, stories)));
    rules.forEach(
        rule ->
            bars.add(
                new Bar(
                    Kind.PLANNED,
                    "allowed by " + rule.title(),
                    -rule.lateMs(),
                    rule.earlyMs(),
                    range(rule))));
  }

  /** The section; empty where no path has a picture. */
  static Optional<Section> of(List<PathRecord> paths, List<PathStory> stories) {
    PicturePart part = new PicturePart(paths, stories);
    if (part.marks.isEmpty()) {
      return Optional.empty();
    }
    PlotFigure figure =
        new PlotFigure(
            new Bars("milliseconds that the sound is early", part.bars, part.marks),
            "Sound against picture",
            "The bar is what the rule allows, 0 is where sound and picture meet; each line is a"
                + " path's sound. Right of 0 it comes before its picture, left of it after.",
            part.grid);
    return Optional.of(Section.of("pictures", "Sound against picture", figure.html("picture")));
  }

  private void path(String name, PictureRecord picture, List<PathStory> stories) {
    double planned = picture.soundEarlyMs().doubleValue();
    picture.rule().ifPresent(rules::add);
    add(name, picture, planned);
    later(name, stories).ifPresent(late -> addMeasured(name, planned - late));
  }

  /** How much later than planned the path was measured, in ms. */
  private static Optional<Double> later(String name, List<PathStory> stories) {
    return stories.stream()
        .filter(story -> story.name().equals(name))
        .findFirst()
        .flatMap(story -> story.latest().comparison())
        .flatMap(ComparisonRecord::differenceMs)
        .map(BigDecimal::doubleValue);
  }

  private void add(String name, PictureRecord picture, double early) {
    marks.add(new Mark(name + " " + Numbers.signed(early, 1) + " ms", early, true));
    grid.row(name, advice(picture), Numbers.signed(early, 1));
  }

  private void addMeasured(String name, double early) {
    String measured = name + ", as measured";
    marks.add(new Mark(measured + " " + Numbers.signed(early, 1) + " ms", early, false));
    grid.row(measured, "", Numbers.signed(early, 1));
  }

  private static String advice(PictureRecord picture) {
    double sound = picture.addToSoundMs().map(BigDecimal::doubleValue).orElse(0.0);
    double video = picture.addToPictureMs().map(BigDecimal::doubleValue).orElse(0.0);
    String standing =
        picture.standing().map(s -> s == Standing.OVER ? "outside" : s.label()).orElse("");
    if (video > 0) {
      return standing + "; delay the picture by " + Numbers.plain(video, 1) + " ms";
    }
    return sound > 0
        ? standing + "; add " + Numbers.plain(sound, 1) + " ms to the sound"
        : standing;
  }

  private static String range(PictureRule rule) {
    return "-"
        + Numbers.brief(rule.lateMs(), 1)
        + " to +"
        + Numbers.brief(rule.earlyMs(), 1)
        + " ms";
  }
}
