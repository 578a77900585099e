package dev.loopgauge.report.plot;

/** How wide a plot is drawn; its text is the same size in each. */
public enum Size {
  /** For a phone: 360 CSS pixels less the margins. */
  NARROW(328),
  /** For a screen or a sheet of A4: 180 mm are 680 CSS pixels. */
  WIDE(680);

  private final int width;

  Size(int width) {
    this.width = width;
  }

  /** The width in CSS pixels. */
  public int width() {
    return width;
  }

  /** The name of its class in the page. */
  public String label() {
    return this == NARROW ? "narrow" : "wide";
  }
}
