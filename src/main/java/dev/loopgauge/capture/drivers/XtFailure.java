package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import xt.audio.Enums.XtCause;
import xt.audio.Structs.XtErrorInfo;
import xt.audio.XtAudio;
import xt.audio.XtException;

/** Says what a driver's error means. */
final class XtFailure {
  private XtFailure() {}

  /** The reason in the system's words, without a full stop. */
  static String reason(XtException thrown) {
    return XtAudio.getErrorInfo(thrown.getError()).service.text;
  }

  /** Why a driver offers nothing, one sentence. */
  static String nothing(XtException thrown, String driver) {
    XtErrorInfo info = XtAudio.getErrorInfo(thrown.getError());
    return info.service.cause == XtCause.SERVICE
        ? driver + ": its audio server doesn't run."
        : driver + ": no device opens (" + info.service.text + ").";
  }

  /** Why channels don't open. */
  static CaptureException opening(XtException thrown, StreamPlan plan) {
    XtErrorInfo info = XtAudio.getErrorInfo(thrown.getError());
    String names = '"' + plan.input().fullName() + '"';
    if (!plan.output().equals(plan.input())) {
      names = '"' + plan.output().fullName() + "\" with " + names;
    }
    String text = "%s doesn't open: %s.".formatted(names, info.service.text);
    if (info.service.cause == XtCause.FORMAT) {
      return new CaptureException(
          Kind.UNSUPPORTED_FORMAT, text, "Leave sample rate and buffer out, or try others.");
    }
    if (info.service.cause == XtCause.SERVICE) {
      return new CaptureException(
          Kind.BACKEND_UNUSABLE, text, "Start the audio server, and try again.");
    }
    return new CaptureException(
        Kind.BUSY, text, "Close other programs that use it, or plug it in, and try again.");
  }
}
