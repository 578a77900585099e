package dev.loopgauge.report.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What is drawn over two axes: lines, points with their uncertainty, and marks. Filled step by
 * step, then drawn as a {@link GraphPlot}.
 */
public final class Graph {
  /** How points are drawn; the forms differ, so that colour is never all that tells them apart. */
  public enum Form {
    /** A round point, for what was measured. */
    ROUND,
    /** A triangle. */
    TRIANGLE,
    /** A square. */
    SQUARE,
    /** A cross, for what was left out. */
    CROSS
  }

  /** How lines are drawn. */
  public enum Stroke {
    /** Whole: what was measured. */
    WHOLE,
    /** Dashed: what was planned. */
    DASHED
  }

  /**
   * A point.
   *
   * @param x where across
   * @param y how high
   * @param uncertainty how far y may lie off either way, 0 or more
   */
  public record Point(double x, double y, double uncertainty) {}

  record Line(List<Point> points, Stroke stroke) {}

  record Cloud(List<Point> points, Form form) {}

  record Upright(double x, double around, String text, Stroke stroke) {}

  record Level(double y, double around) {}

  record Note(double x, double y, String text) {}

  final String across;
  final String up;
  double leastHeight;
  final List<Line> lines = new ArrayList<>();
  final List<Cloud> clouds = new ArrayList<>();
  final List<Upright> uprights = new ArrayList<>();
  final List<Level> levels = new ArrayList<>();
  final List<Note> notes = new ArrayList<>();
  final SortedMap<Double, String> names = new TreeMap<>();

  /**
   * An empty graph.
   *
   * @param across what the axis across counts, with its unit
   * @param up what the upright axis counts, with its unit
   */
  public Graph(String across, String up) {
    this.across = across;
    this.up = up;
  }

  /** Lets the upright axis span this much or more, so that nothing looks larger than it is. */
  public Graph spanningAtLeast(double height) {
    leastHeight = height;
    return this;
  }

  /** Adds a line through points. */
  public Graph line(List<Point> points, Stroke stroke) {
    lines.add(new Line(List.copyOf(points), stroke));
    return this;
  }

  /** Adds points. */
  public Graph points(List<Point> points, Form form) {
    clouds.add(new Cloud(List.copyOf(points), form));
    return this;
  }

  /**
   * Adds a line from top to bottom with its text above.
   *
   * @param around how far it may lie off either way, drawn as a strip
   */
  public Graph upright(double x, double around, String text, Stroke stroke) {
    uprights.add(new Upright(x, around, Marking.of(text), stroke));
    return this;
  }

  /**
   * Adds a dashed line from side to side.
   *
   * @param around how far it may lie off either way, drawn as a strip
   */
  public Graph level(double y, double around) {
    levels.add(new Level(y, around));
    return this;
  }

  /** Writes a few letters above a point. */
  public Graph note(double x, double y, String text) {
    notes.add(new Note(x, y, Marking.of(text)));
    return this;
  }

  /** Puts a name in place of a number on the axis across. */
  public Graph name(double x, String name) {
    names.put(x, Marking.of(name));
    return this;
  }
}
