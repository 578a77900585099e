package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.FeedbackGuard;
import dev.loopgauge.capture.FlowLimit;
import dev.loopgauge.capture.GraphSession;
import dev.loopgauge.capture.PortLatency;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.Take;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;

/**
 * Channels on a JACK server. Playing and recording are counted by the same clock, so a rig that
 * other programs make up is late by its own delay alone, and a sound card by the same number of
 * samples at each opening.
 */
public final class JackSession implements GraphSession {
  /** What the graph reports has settled once this many looks in a row see the same. */
  private static final int SAME_LOOKS = 25;

  private static final String SERVER = "The audio server";
  private static final int MOST_LOOKS = 150;

  private final SessionInfo info;
  private final JackClients clients;
  private final AtomicReference<Running> current;
  private final ServerWatch watch;
  private boolean closed;

  JackSession(
      SessionInfo info, JackClients clients, AtomicReference<Running> current, ServerWatch watch) {
    this.info = info;
    this.clients = clients;
    this.current = current;
    this.watch = watch;
  }

  @Override
  public SessionInfo info() {
    return info;
  }

  @Override
  public Capture capture(Take take) throws CaptureException {
    checkOpen();
    take.checkFits(clients.sendCount(), info.rate());
    watch.checkUnchanged();
    CallbackTake running = new CallbackTake(take, clients.returnCount());
    current.set(running);
    try {
      follow(take, running);
      return new Capture(running.recording(info.rate()), running.incidents());
    } finally {
      // Whatever still played is silent from the next block on.
      current.set(null);
    }
  }

  @Override
  public void stream(BlockListener listener) throws CaptureException {
    checkOpen();
    watch.checkUnchanged();
    CallbackStream running =
        new CallbackStream(clients.returnCount(), info.bufferSamples(), info.rate().hertz());
    current.set(running);
    try {
      FlowLimit limit = FlowLimit.ofStream(SERVER);
      do {
        FlowLimit.pause();
        watch.check(running);
        watch.checkBlockSize();
        clients.checkPatches();
        limit.check(running.progress());
      } while (running.empty(listener));
    } finally {
      current.set(null);
    }
  }

  private void follow(Take take, CallbackTake running) throws CaptureException {
    FeedbackGuard guard = new FeedbackGuard(take, info.rate());
    FlowLimit limit = FlowLimit.ofTake(SERVER, (double) take.frames() / info.rate().hertz());
    while (!running.isComplete()) {
      FlowLimit.pause();
      watch.check(running);
      clients.checkPatches();
      checkFeedback(guard, running);
      take.watch().recorded(running.returns(), running.recorded().frames());
      limit.check(running.played().frames() + running.recorded().frames());
    }
    // The server tells of lost time and lost patches a moment later.
    FlowLimit.pause();
    watch.check(running);
    clients.checkPatches();
  }

  private void checkFeedback(FeedbackGuard guard, CallbackTake running) throws CaptureException {
    if (guard.trips(running.returns(), running.recorded().frames())) {
      current.set(null);
      throw new CaptureException(
          CaptureException.Kind.FEEDBACK,
          "The returns grew louder with nothing playing, so playing was stopped.",
          "Break the feedback loop: mute the sends' way back into the returns, and measure again.");
    }
  }

  /**
   * The latency that the graph reports from a send onwards: what a rig that other programs make up
   * states about itself, or what a sound card states about its output. The server spreads it
   * through the graph a moment after the channels are opened: read it after a take.
   *
   * @param index the send, counted from 0 in the order of the request
   * @throws CaptureException when the server no longer answers
   */
  public PortLatency sendLatency(int index) throws CaptureException {
    return reported(() -> clients.sendLatency(index));
  }

  /**
   * The latency that the graph reports up to a return: the same rig once more, or what a sound card
   * states about its input.
   *
   * @param index the return, counted from 0 in the order of the request
   * @throws CaptureException when the server no longer answers
   */
  public PortLatency returnLatency(int index) throws CaptureException {
    return reported(() -> clients.returnLatency(index));
  }

  @Override
  public Stated stated(int send, int ret) throws CaptureException {
    Stated last = new Stated(sendLatency(send), returnLatency(ret));
    int same = 0;
    for (int look = 0; look < MOST_LOOKS && same < SAME_LOOKS; look++) {
      FlowLimit.pause();
      Stated now = new Stated(sendLatency(send), returnLatency(ret));
      same = now.equals(last) ? same + 1 : 0;
      last = now;
    }
    return last;
  }

  private PortLatency reported(Callable<PortLatency> read) throws CaptureException {
    checkOpen();
    watch.checkThere();
    return ServerLibrary.TIMED.of(read, tooLate -> {});
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
      clients.close();
    }
  }
}
