package dev.loopgauge.report.plot;

import java.awt.Graphics2D;

/** Who hears what when: all paths on one time axis, what was measured over what is predicted. */
public final class Timeline extends Plot {
  private final Lanes lanes;

  /** A picture of these rows. */
  public Timeline(Lanes lanes) {
    this.lanes = lanes;
  }

  @Override
  int height(Size size) {
    return new TimelineLayout(lanes, size).height();
  }

  @Override
  void draw(Graphics2D canvas, Size size) {
    new TimelineDrawing(lanes, new TimelineLayout(lanes, size), canvas).draw();
  }
}
