package dev.loopgauge.capture.simulated;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.FeedbackGuard;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/** Open channels of the simulated card. */
final class SimulatedSession implements AudioSession {
  /** What each return hears of itself. */
  static final double FLOOR_DBFS = -90;

  private final SessionRequest request;
  private final SessionInfo info;
  private final Epochs epochs;
  private final int cardSamples;
  private final SplittableRandom random;
  private final Pace pace;
  private boolean closed;

  /**
   * A session of a card that is {@code cardSamples} late by itself.
   *
   * @param random the one source of chance for all its takes and streams
   * @param pace how fast its streams flow
   */
  SimulatedSession(
      SessionRequest request,
      SessionInfo info,
      Epochs epochs,
      int cardSamples,
      SplittableRandom random,
      Pace pace) {
    this.request = request;
    this.info = info;
    this.epochs = epochs;
    this.cardSamples = cardSamples;
    this.random = random;
    this.pace = pace;
  }

  @Override
  public SessionInfo info() {
    return info;
  }

  @Override
  public Capture capture(Take take) throws CaptureException {
    check(take);
    Optional<CardFault> failing = failing(take.frames());
    if (failing.isPresent()) {
      throw failing.get().failure(take.frames());
    }
    List<Signal> returns = new ArrayList<>();
    for (int channel : request.returns()) {
      returns.add(heard(channel, take));
    }
    listenForFeedback(take, returns);
    return new Capture(returns, List.of());
  }

  @Override
  public void stream(BlockListener listener) throws CaptureException {
    checkOpen();
    long seed = random.nextLong();
    new SimulatedStream(request.returns(), epochs, cardSamples, info.rate(), seed)
        .play(listener, pace.start());
  }

  @Override
  public void close() {
    closed = true;
  }

  private void check(Take take) {
    checkOpen();
    take.checkFits(request.sends().size(), info.rate());
  }

  private void checkOpen() {
    if (closed) {
      throw new IllegalStateException("the session is closed");
    }
  }

  private Optional<CardFault> failing(int frames) {
    return epochs.during(0, frames).stream()
        .flatMap(epoch -> epoch.wiring().failing(request.returns()).stream())
        .findFirst();
  }

  private Signal heard(int channel, Take take) {
    SplittableRandom chance = random.split();
    double[] heard = new double[take.frames()];
    for (Epoch epoch : epochs.during(0, heard.length)) {
      int from = (int) epoch.from();
      int to = (int) Math.min(epoch.to(), heard.length);
      double[] whole = heard(epoch.wiring().into(channel), take, chance);
      System.arraycopy(whole, from, heard, from, to - from);
    }
    Scene card = scene(Rig.cable(info.rate()), take, chance);
    return Signal.of(info.rate(), new Converter().on(new Noise(FLOOR_DBFS).on(heard, card), card));
  }

  private double[] heard(List<Way> ways, Take take, SplittableRandom chance) {
    List<double[]> sounds = new ArrayList<>();
    for (Way way : ways) {
      sounds.add(way.on(played(way.send(), take), cardSamples, scene(way.rig(), take, chance)));
    }
    return Way.sum(sounds, take.frames());
  }

  private Scene scene(Rig rig, Take take, SplittableRandom chance) {
    return new Scene(info.rate(), rig.blockSize(), take.listening(), chance);
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

  private void listenForFeedback(Take take, List<Signal> returns) throws CaptureException {
    float[][] heard = new float[returns.size()][take.frames()];
    for (int channel = 0; channel < heard.length; channel++) {
      for (int i = 0; i < take.frames(); i++) {
        heard[channel][i] = (float) returns.get(channel).at(i);
      }
    }
    take.watch().recorded(heard, take.frames());
    if (new FeedbackGuard(take, info.rate()).trips(heard, take.frames())) {
      throw new CaptureException(
          CaptureException.Kind.FEEDBACK,
          "the returns grew louder with nothing playing: a feedback loop; playing was stopped",
          "mute the loudspeakers, or break the loop from the return back to the send");
    }
  }
}
