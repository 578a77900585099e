package dev.loopgauge.capture;

import dev.loopgauge.signal.HintedException;
import java.util.Locale;
import java.util.Optional;

/** The sound device or server failed, or can't do what was asked. */
public final class CaptureException extends HintedException {
  private static final long serialVersionUID = 1L;

  /** What went wrong, for documents and exit codes. */
  public enum Kind {
    /** The back end can't be used on this computer just now. */
    BACKEND_UNUSABLE,
    /** There is no device of that name. */
    NO_SUCH_DEVICE,
    /** The device has fewer channels than asked for. */
    TOO_FEW_CHANNELS,
    /** The device can't run at that rate or buffer. */
    UNSUPPORTED_FORMAT,
    /** Somebody else has the device. */
    BUSY,
    /** The device, the line or the server went away. */
    GONE,
    /** Fewer frames were played or recorded than asked for. */
    SHORT,
    /** The sound stopped flowing. */
    TIMED_OUT,
    /** The returns grew louder with nothing playing, so playing was stopped. */
    FEEDBACK;

    private String code() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  private final Kind kind;
  private final transient Optional<Capture> before;

  /**
   * A failure.
   *
   * @param kind what went wrong
   * @param text what happened, one sentence: expected, found, where
   * @param hint what to try, one sentence
   */
  public CaptureException(Kind kind, String text, String hint) {
    this(kind, text, hint, Optional.empty());
  }

  private CaptureException(Kind kind, String text, String hint, Optional<Capture> before) {
    super(kind.code(), text, hint);
    this.kind = kind;
    this.before = before;
  }

  /**
   * The same failure with what had been recorded by then.
   *
   * @param whole a whole take, silent where nothing was recorded; its incidents say from where on
   */
  public CaptureException after(Capture whole) {
    CaptureException same = new CaptureException(kind, getMessage(), hint(), Optional.of(whole));
    same.setStackTrace(getStackTrace());
    return same;
  }

  /** What had been recorded before it failed, where some of that can be used. */
  public Optional<Capture> before() {
    return before;
  }

  /** What went wrong. */
  public Kind kind() {
    return kind;
  }
}
