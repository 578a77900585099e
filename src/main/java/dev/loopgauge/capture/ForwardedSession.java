package dev.loopgauge.capture;

/** A session that hands all on to another; for those that listen in on a part of it. */
public abstract class ForwardedSession implements AudioSession {
  private final AudioSession session;

  /** Hands on to a session. */
  protected ForwardedSession(AudioSession session) {
    this.session = session;
  }

  @Override
  public SessionInfo info() {
    return session.info();
  }

  @Override
  public Capture capture(Take take) throws CaptureException {
    return session.capture(take);
  }

  @Override
  public void stream(BlockListener listener) throws CaptureException {
    session.stream(listener);
  }

  @Override
  public void renew() throws CaptureException {
    session.renew();
  }

  @Override
  public void close() {
    session.close();
  }
}
