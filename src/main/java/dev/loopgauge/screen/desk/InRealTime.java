package dev.loopgauge.screen.desk;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.FlowLimit;
import dev.loopgauge.capture.ForwardedSession;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.capture.TakeWatch;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Lets the built-in rig's takes last as long as a card's, so that who practises sees the levels
 * come and has something to stop. Its streams do so by themselves.
 */
final class InRealTime implements AudioSystem.Tap {
  @Override
  public AudioSession on(AudioSession session, SessionRequest request) {
    return new Paced(session);
  }

  private static final class Paced extends ForwardedSession {
    Paced(AudioSession session) {
      super(session);
    }

    @Override
    public Capture capture(Take take) throws CaptureException {
      long began = System.nanoTime();
      Capture whole = super.capture(take.watchedBy(TakeWatch.NONE));
      float[][] sound = samples(whole.returns(), take.frames());
      int come = 0;
      while (come < take.frames()) {
        FlowLimit.pause();
        double seconds = (System.nanoTime() - began) / (double) TimeUnit.SECONDS.toNanos(1);
        come = (int) Math.min(take.frames(), seconds * info().rate().hertz());
        take.watch().recorded(sound, come);
      }
      return whole;
    }

    private static float[][] samples(List<Signal> returns, int frames) {
      float[][] samples = new float[returns.size()][frames];
      for (int channel = 0; channel < samples.length; channel++) {
        for (int i = 0; i < frames; i++) {
          samples[channel][i] = (float) returns.get(channel).at(i);
        }
      }
      return samples;
    }
  }
}
