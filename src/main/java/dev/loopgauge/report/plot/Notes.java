package dev.loopgauge.report.plot;

import dev.loopgauge.report.plot.Graph.Note;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.TextAnchor;

/** Letters above points; those of points too near each other share one place. */
final class Notes {
  /** The width of a letter and of what follows it, in CSS pixels. */
  private static final int LETTER = 16;

  private Notes() {}

  /**
   * Writes them.
   *
   * @param perPixel how much of the axis across a pixel is
   * @param above how far above its point a note stands
   */
  static void write(XYPlot plot, List<Note> notes, double perPixel, double above) {
    List<Note> apart = new ArrayList<>();
    notes.stream()
        .sorted(Comparator.comparingDouble(Note::x))
        .forEach(note -> add(apart, note, perPixel));
    apart.forEach(
        note ->
            Charts.write(plot, note.text(), note.x(), note.y() + above, TextAnchor.BOTTOM_CENTER));
  }

  private static void add(List<Note> apart, Note note, double perPixel) {
    if (!apart.isEmpty()) {
      Note last = apart.get(apart.size() - 1);
      double letters = (last.text().length() + note.text().length()) / 2.0;
      if (note.x() - last.x() < letters * LETTER * perPixel) {
        apart.set(
            apart.size() - 1,
            new Note(last.x(), Math.max(last.y(), note.y()), last.text() + " " + note.text()));
        return;
      }
    }
    apart.add(note);
  }
}
