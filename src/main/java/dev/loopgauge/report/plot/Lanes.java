package dev.loopgauge.report.plot;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * The rows of a timeline: a path each, with its predicted stages by their kind, what was measured,
 * and the limit of its listener.
 */
public final class Lanes {
  /** A limit further away than this many times the longest electronics is left out. */
  private static final double FAR = 2;

  /** Air that runs further than this many times the rest is cut. */
  private static final double CUT = 2.5;

  private static final double CUT_AT = 1.25;

  /** What a segment of a row stands for. */
  public enum Part {
    /** Converters at either end. */
    CONVERTER("converters", Ink.CONVERTER),
    /** The console. */
    CONSOLE("console", Ink.CONSOLE),
    /** A computer that works in blocks, and what runs on it. */
    HOST("host", Ink.HOST),
    /** An audio network or a radio link. */
    NETWORK("network, radio", Ink.NETWORK),
    /** Any other electronics. */
    OTHER("other stages", Ink.QUIET),
    /** Air from the loudspeaker to the ear. */
    AIR("air", Ink.AIR);

    private final String label;
    private final Ink ink;

    Part(String label, Ink ink) {
      this.label = label;
      this.ink = ink;
    }

    /** Its name for readers. */
    public String label() {
      return label;
    }

    Ink ink() {
      return ink;
    }
  }

  /** How a row stands, each with a shape and a colour of its own. */
  public enum Sign {
    /** A disc. */
    GOOD,
    /** A triangle. */
    BAD,
    /** A diamond. */
    UNDECIDED,
    /** A ring. */
    NOT_JUDGED
  }

  /** A part of a row, in ms after the source. */
  public record Segment(Part part, double fromMs, double toMs) {}

  /**
   * A path.
   *
   * @param figure what stands at its right, such as its delay with the unit
   * @param segments what is predicted, one after the other
   * @param measuredMs when it was measured to arrive, without air
   * @param limitMs when it must have arrived at its listener
   */
  public record Row(
      Sign sign,
      String name,
      String figure,
      List<Segment> segments,
      OptionalDouble measuredMs,
      OptionalDouble limitMs) {
    /** Copies the list. */
    public Row {
      segments = List.copyOf(segments);
    }

    private DoubleStream moments() {
      return DoubleStream.concat(
          segments.stream()
              .filter(segment -> segment.part() != Part.AIR)
              .flatMapToDouble(s -> DoubleStream.of(s.fromMs(), s.toMs())),
          measuredMs.stream());
    }

    private double endMs() {
      return segments.stream().mapToDouble(Segment::toMs).max().orElse(0);
    }
  }

  /** Rows under a heading, such as all paths of one kind of listener. */
  public record Group(String name, List<Row> rows) {
    /** Copies the list. */
    public Group {
      rows = List.copyOf(rows);
    }
  }

  private final List<Group> groups;
  private final double lowest;
  private final double highest;

  /** These groups from the top down. */
  public Lanes(List<Group> groups) {
    this.groups = List.copyOf(groups);
    double most = rows().flatMapToDouble(Row::moments).max().orElse(1);
    double limit =
        rows()
            .flatMapToDouble(r -> r.limitMs().stream())
            .filter(l -> l < most * FAR)
            .max()
            .orElse(0);
    lowest = Math.min(0, rows().flatMapToDouble(Row::moments).min().orElse(0));
    double firm = Math.max(Math.max(most, limit), lowest + 0.01);
    double all = Math.max(firm, rows().mapToDouble(Row::endMs).max().orElse(0));
    highest = all > CUT * firm ? CUT_AT * firm : all;
  }

  private Stream<Row> rows() {
    return groups.stream().flatMap(group -> group.rows().stream());
  }

  /** The kinds of stages that are in it, in their order. */
  List<Part> parts() {
    return Arrays.stream(Part.values())
        .filter(part -> rows().anyMatch(r -> r.segments().stream().anyMatch(s -> s.part() == part)))
        .toList();
  }

  boolean isMeasured() {
    return rows().anyMatch(row -> row.measuredMs().isPresent());
  }

  boolean isLimited() {
    return rows().anyMatch(row -> isShown(row.limitMs()));
  }

  boolean isShown(OptionalDouble limit) {
    return limit.isPresent() && limit.getAsDouble() <= highest;
  }

  double lowestMs() {
    return lowest;
  }

  double highestMs() {
    return highest;
  }

  List<Group> groups() {
    return groups;
  }
}
