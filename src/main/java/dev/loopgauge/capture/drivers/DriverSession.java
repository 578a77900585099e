package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.FeedbackGuard;
import dev.loopgauge.capture.FlowLimit;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.SampleRate;

/**
 * Takes on a driver's stream, which runs from opening to closing. Where two devices are joined, a
 * loss shifts what is recorded against what is played: then the stream has to be opened anew.
 */
final class DriverSession implements AudioSession {
  private static final String WHO = "The sound driver";
  private static final String AGAIN = "Run the command again: it opens the channels anew.";

  private final SessionRequest request;
  private final Opener opener;
  private OpenStream open;
  private boolean used;
  private boolean lost;
  private boolean closed;

  /** Opens the channels, the same ones each time. */
  interface Opener {
    /** A stream in which sound flows steadily, to be closed by the caller. */
    OpenStream open() throws CaptureException;
  }

  private DriverSession(SessionRequest request, Opener opener, OpenStream open) {
    this.request = request;
    this.opener = opener;
    this.open = open;
  }

  static DriverSession start(SessionRequest request, Opener opener) throws CaptureException {
    return new DriverSession(request, opener, opener.open());
  }

  @Override
  public SessionInfo info() {
    return open.info();
  }

  @Override
  public Capture capture(Take take) throws CaptureException {
    checkOpen();
    take.checkFits(request.sends().size(), info().rate());
    prepare();
    DuplexTake running = new DuplexTake(take, request.returns().size(), info().rate());
    open.flow().run(running);
    try {
      follow(take, running);
    } catch (CaptureException e) {
      throw lost ? running.beforeLoss(e.getMessage()).map(e::after).orElse(e) : e;
    } finally {
      open.flow().rest();
    }
    return running.capture();
  }

  /** Sees that the stream is still the one that was opened, between takes. */
  private void prepare() throws CaptureException {
    lost |= !info().sampleLocked() && open.flow().hasLost();
    if (lost) {
      if (used) {
        throw soundLost();
      }
      renew(); // Nothing has been measured yet, so the offset may still be another.
    }
    used = true;
    open.flow().forgetLosses();
    open.check();
    checkBlockSize();
  }

  private void checkBlockSize() throws CaptureException {
    if (info().sampleLocked() && open.flow().blockSize() != info().bufferSamples()) {
      throw new CaptureException(
          Kind.GONE,
          "The driver's block size changed from %d to %d samples since the channels were opened."
              .formatted(info().bufferSamples(), open.flow().blockSize()),
          AGAIN);
    }
  }

  private void follow(Take take, DuplexTake running) throws CaptureException {
    SampleRate rate = info().rate();
    FeedbackGuard guard = new FeedbackGuard(take, rate);
    FlowLimit limit = FlowLimit.ofTake(WHO, (double) take.frames() / rate.hertz());
    while (!running.isComplete()) {
      FlowLimit.pause();
      int done = running.done(); // Read before it is looked whether sound was lost.
      look(running);
      running.cleanUpTo(done);
      checkFeedback(guard, running, done);
      take.watch().recorded(running.returns(), done);
      limit.check(done);
    }
    take.watch().recorded(running.returns(), running.done());
    // A driver tells of lost sound a moment later.
    FlowLimit.pause();
    look(running);
    open.check();
  }

  private void look(SessionRun running) throws CaptureException {
    if (!info().sampleLocked() && open.flow().hasLost()) {
      lost = true;
      throw soundLost();
    }
    open.look(running);
  }

  private CaptureException soundLost() {
    return new CaptureException(
        Kind.SHORT,
        "Sound was lost between \"%s\" and \"%s\".".formatted(info().output(), info().input()),
        "Close other programs, ask for a larger buffer, and measure again.");
  }

  private void checkFeedback(FeedbackGuard guard, DuplexTake running, int done)
      throws CaptureException {
    if (guard.trips(running.returns(), done)) {
      open.flow().rest();
      throw new CaptureException(
          Kind.FEEDBACK,
          "The returns grew louder with nothing playing, so playing was stopped.",
          "Break the feedback loop: mute the sends' way back into the returns, and measure again.");
    }
  }

  @Override
  public void stream(BlockListener listener) throws CaptureException {
    checkOpen();
    open.check();
    open.flow().forgetLosses();
    BlockStream running =
        new BlockStream(request.returns().size(), info().bufferSamples(), info().rate().hertz());
    open.flow().run(running);
    try {
      FlowLimit limit = FlowLimit.ofStream(WHO);
      do {
        FlowLimit.pause();
        lost |= !info().sampleLocked() && open.flow().hasLost();
        open.look(running);
        checkBlockSize();
        limit.check(running.progress());
      } while (running.empty(listener));
    } finally {
      open.flow().rest();
    }
  }

  @Override
  public void renew() throws CaptureException {
    if (lost) {
      SessionInfo before = info();
      open.close();
      open = opener.open();
      lost = false;
      if (!info().equals(before)) {
        throw new CaptureException(
            Kind.GONE,
            "\"%s\" opens otherwise than before sound was lost.".formatted(info().input()),
            "See that nobody changes the device meanwhile, and measure again.");
      }
    }
  }

  private void checkOpen() {
    if (closed) {
      throw new IllegalStateException("the session is closed");
    }
  }

  @Override
  public void close() {
    if (!closed) {
      closed = true;
      open.close();
    }
  }
}
