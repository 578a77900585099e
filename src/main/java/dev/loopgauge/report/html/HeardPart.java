package dev.loopgauge.report.html;

import dev.loopgauge.chain.Listener;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.plot.Lanes;
import dev.loopgauge.report.plot.Lanes.Group;
import dev.loopgauge.report.plot.Timeline;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Who hears what when: all paths on one time axis, by their listeners. */
final class HeardPart {
  /** More rows than a screen or two can't be taken in at once. */
  private static final int MOST = 60;

  private HeardPart() {}

  /** The figure; empty for fewer than two paths, which have nothing beside them. */
  static Optional<PlotFigure> of(List<PathStory> paths, Budgets budgets) {
    Set<String> measured = paths.stream().map(PathStory::name).collect(Collectors.toSet());
    List<Heard> all =
        Stream.concat(
                paths.stream().map(path -> Heard.of(path, budgets)),
                budgets.all().stream()
                    .filter(path -> !measured.contains(path.name()))
                    .map(path -> Heard.of(path, budgets)))
            .filter(heard -> heard.measuredMs().isPresent() || heard.electronicsMs().isPresent())
            .toList();
    return all.size() < 2 ? Optional.empty() : Optional.of(figure(all));
  }

  private static PlotFigure figure(List<Heard> all) {
    List<Heard> shown = all.subList(0, Math.min(MOST, all.size()));
    List<Group> groups = new ArrayList<>();
    byListener(shown)
        .forEach(
            (heading, heard) ->
                groups.add(new Group(heading, heard.stream().map(Heard::row).toList())));
    String some =
        shown.size() < all.size()
            ? " Shown are " + shown.size() + " of " + all.size() + " paths."
            : "";
    return new PlotFigure(
        new Timeline(new Lanes(groups)),
        "Who hears what when",
        "Each row is a path from the source to its listener: its stages as predicted, by kind, and"
            + " over them a dark or light line for what was measured. Air comes last, is not measured,"
            + " and is cut where the picture ends. A flag is the latest that the stages before the"
            + " air may end for the listener's limit. At the right, when it is heard."
            + some,
        table(shown));
  }

  private static Map<String, List<Heard>> byListener(List<Heard> all) {
    Map<Optional<Listener>, List<Heard>> byListener =
        new TreeMap<>((a, b) -> Integer.compare(rank(a), rank(b)));
    all.forEach(
        heard -> byListener.computeIfAbsent(heard.listener(), who -> new ArrayList<>()).add(heard));
    Map<String, List<Heard>> named = new LinkedHashMap<>();
    byListener.forEach((who, heard) -> named.put(heading(who, heard), heard));
    return named;
  }

  private static int rank(Optional<Listener> listener) {
    return listener.map(Enum::ordinal).orElse(Integer.MAX_VALUE);
  }

  private static String heading(Optional<Listener> listener, List<Heard> heard) {
    List<String> limits =
        heard.stream()
            .flatMapToDouble(path -> path.limitMs().stream())
            .distinct()
            .mapToObj(limit -> Numbers.brief(limit, 2) + " ms")
            .toList();
    return listener.map(Listener::label).orElse("no listener stated")
        + (limits.isEmpty() ? "" : ", limit " + String.join(" or ", limits));
  }

  private static Grid table(List<Heard> shown) {
    Grid grid =
        new Grid(
            "The same in ms: electronics as predicted and measured, then the air",
            "Path",
            "budget",
            "measured",
            "air",
            "limit");
    for (Heard heard : shown) {
      grid.row(
          heard.name() + heard.listener().map(who -> ", " + who.label()).orElse(""),
          plain(heard.electronicsMs(), 2),
          plain(heard.measuredMs(), 2),
          heard.airMs() > 0 ? Numbers.plain(heard.airMs(), 2) : "-",
          heard.limitMs().isPresent() ? Numbers.brief(heard.limitMs().getAsDouble(), 2) : "-");
    }
    return grid;
  }

  private static String plain(OptionalDouble ms, int decimals) {
    return ms.isPresent() ? Numbers.plain(ms.getAsDouble(), decimals) : "-";
  }
}
