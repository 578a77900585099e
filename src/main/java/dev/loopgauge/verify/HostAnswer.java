package dev.loopgauge.verify;

/** How what a host or plug-in reports stands to what it adds. */
public enum HostAnswer {
  /** It adds what it reports. */
  AGREES,
  /** None reported and none measured: it adds nothing, or its host takes back all that it adds. */
  NO_DELAY,
  /** It reports a delay and none is measured: its host takes it back, or it is bypassed. */
  TAKEN_BACK,
  /** Twice the reported delay is measured. */
  TWICE,
  /** The sound comes out as much too early as is reported: taken back though it isn't there. */
  TAKEN_BACK_IN_VAIN,
  /** It adds a delay and reports none. */
  NOT_REPORTED,
  /** It adds more than it reports. */
  MORE_THAN_REPORTED,
  /** It adds less than it reports. */
  LESS_THAN_REPORTED,
  /** Nobody said what is reported. */
  UNASKED,
  /** The sound card's own delay is in the number. */
  UNDECIDED;

  static HostAnswer of(ReportedDelay reported, double measured, double uncertainty) {
    double stated = reported.samples();
    double within = reported.roundingSamples() + uncertainty;
    boolean noneStated = stated <= reported.roundingSamples();
    if (Math.abs(measured - stated) <= within) {
      return noneStated ? NO_DELAY : AGREES;
    }
    if (noneStated) {
      return measured > 0 ? NOT_REPORTED : LESS_THAN_REPORTED;
    }
    if (Math.abs(measured) <= within) {
      return TAKEN_BACK;
    }
    if (Math.abs(measured - 2 * stated) <= within + reported.roundingSamples()) {
      return TWICE;
    }
    if (Math.abs(measured + stated) <= within) {
      return TAKEN_BACK_IN_VAIN;
    }
    return measured > stated ? MORE_THAN_REPORTED : LESS_THAN_REPORTED;
  }
}
