package dev.loopgauge.capture.simulated;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.FeedbackGuard;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Open channels of the simulated card: a straight cable on channel 1, the rig on channel 2. */
final class SimulatedSession implements AudioSession {
  private static final int CABLE = 1;
  private static final int RIG = 2;
  private static final double FLOOR_DBFS = -90;

  private final SessionRequest request;
  private final SessionInfo info;
  private final Rig rig;
  private final int cardSamples;
  private final SplittableRandom random;
  private boolean closed;

  /**
   * A session of a card that is {@code cardSamples} late by itself.
   *
   * @param random the one source of chance for all its takes
   */
  SimulatedSession(
      SessionRequest request, SessionInfo info, Rig rig, int cardSamples, SplittableRandom random) {
    this.request = request;
    this.info = info;
    this.rig = rig;
    this.cardSamples = cardSamples;
    this.random = random;
  }

  @Override
  public SessionInfo info() {
    return info;
  }

  @Override
  public Capture capture(Take take) throws CaptureException {
    check(take);
    if (rig.failing().isPresent()) {
      throw rig.failing().get().failure(take.frames());
    }
    List<Signal> returns = new ArrayList<>();
    for (int channel : request.returns()) {
      returns.add(heard(channel, take));
    }
    listenForFeedback(take, returns);
    return new Capture(returns, List.of());
  }

  @Override
  public void close() {
    closed = true;
  }

  private void check(Take take) {
    if (closed) {
      throw new IllegalStateException("the session is closed");
    }
    take.checkFits(request.sends().size(), info.rate());
  }

  private Signal heard(int channel, Take take) {
    Scene scene = new Scene(info.rate(), rig.blockSize(), take.listening(), random.split());
    double[] sound = played(channel, take);
    for (SoundEffect effect : way(channel)) {
      sound = effect.on(sound, scene);
    }
    return Signal.of(info.rate(), sound);
  }

  /** What the send of that number plays: nothing when the session hasn't opened it. */
  private double[] played(int channel, Take take) {
    double[] sound = new double[take.frames()];
    int place = request.sends().indexOf(channel);
    if (place >= 0) {
      take.sends().get(place).copyTo(0, sound, 0, sound.length);
    }
    return sound;
  }

  private List<SoundEffect> way(int channel) {
    List<SoundEffect> way = new ArrayList<>();
    if (channel == CABLE) {
      way.add(new DelayEffect(cardSamples));
    }
    if (channel == RIG) {
      way.add(new DelayEffect(cardSamples + rig.loop().samples()));
      way.addAll(rig.heard());
    }
    way.add(new Noise(FLOOR_DBFS));
    way.add(new Converter());
    return way;
  }

  private void listenForFeedback(Take take, List<Signal> returns) throws CaptureException {
    float[][] heard = new float[returns.size()][take.frames()];
    for (int channel = 0; channel < heard.length; channel++) {
      for (int i = 0; i < take.frames(); i++) {
        heard[channel][i] = (float) returns.get(channel).at(i);
      }
    }
    if (new FeedbackGuard(take, info.rate()).trips(heard, take.frames())) {
      throw new CaptureException(
          CaptureException.Kind.FEEDBACK,
          "the returns grew louder with nothing playing: a feedback loop; playing was stopped",
          "mute the loudspeakers, or break the loop from the return back to the send");
    }
  }
}
