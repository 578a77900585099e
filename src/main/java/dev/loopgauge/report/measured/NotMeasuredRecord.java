package dev.loopgauge.report.measured;

/** A path of a round without a measurement. */
public record NotMeasuredRecord(String path, String reason) {
  /** Why a path that has no patch was not measured. */
  public static final String NO_PATCH = "it has no patch";

  /** Whether it was to be measured. */
  public boolean wasDue() {
    return !reason.equals(NO_PATCH);
  }
}
