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
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/** Open channels of the simulated card. */
final class SimulatedSession implements AudioSession {
  private static final int STREAM_BLOCK = 4_800;
  private static final double FLOOR_DBFS = -90;

  private final SessionRequest request;
  private final SessionInfo info;
  private final Wiring wiring;
  private final int cardSamples;
  private final SplittableRandom random;
  private boolean closed;

  /**
   * A session of a card that is {@code cardSamples} late by itself.
   *
   * @param random the one source of chance for all its takes
   */
  SimulatedSession(
      SessionRequest request,
      SessionInfo info,
      Wiring wiring,
      int cardSamples,
      SplittableRandom random) {
    this.request = request;
    this.info = info;
    this.wiring = wiring;
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
    Optional<CardFault> failing = wiring.failing(request.returns());
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
    Take silence =
        new Take(
            Collections.nCopies(request.sends().size(), Signal.silence(info.rate(), 1)),
            STREAM_BLOCK,
            List.of());
    float[][] block = new float[request.returns().size()][STREAM_BLOCK];
    long frame = 0;
    do {
      List<Signal> heard = capture(silence).returns();
      for (int ret = 0; ret < block.length; ret++) {
        for (int i = 0; i < STREAM_BLOCK; i++) {
          block[ret][i] = (float) heard.get(ret).at(i);
        }
      }
      frame += STREAM_BLOCK;
    } while (listener.block(frame - STREAM_BLOCK, block, STREAM_BLOCK));
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
    SplittableRandom chance = random.split();
    List<double[]> sounds = new ArrayList<>();
    for (Way way : wiring.into(channel)) {
      sounds.add(way.on(played(way.send(), take), cardSamples, scene(way.rig(), take, chance)));
    }
    double[] sum = Way.sum(sounds, take.frames());
    Scene card = scene(Rig.cable(info.rate()), take, chance);
    return Signal.of(info.rate(), new Converter().on(new Noise(FLOOR_DBFS).on(sum, card), card));
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
