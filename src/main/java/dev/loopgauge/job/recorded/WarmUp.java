package dev.loopgauge.job.recorded;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.Random;

/**
 * A small estimate of made-up noise, made beside what a program does before it has a recording. The
 * virtual machine loads and compiles what an estimate needs meanwhile, so that the first that
 * counts takes a tenth less of a short command's time.
 */
public final class WarmUp {
  /** A low one, so that it takes little memory. */
  private static final SampleRate RATE = new SampleRate(8000);

  private static final int LENGTH = 4000;
  private static final int DELAY = 11;
  private static final double MAX_DELAY_SECONDS = 0.01;

  private WarmUp() {}

  /** Begins one and doesn't wait for its end. */
  public static void begin() {
    WarmUpThread thread = new WarmUpThread();
    thread.setDaemon(true);
    thread.setUncaughtExceptionHandler(thread);
    thread.start();
  }

  /** A class of its own, since a lambda's would be made anew at each start. */
  private static final class WarmUpThread extends Thread
      implements Thread.UncaughtExceptionHandler {
    WarmUpThread() {
      super("warm-up");
    }

    @Override
    public void run() {
      estimate();
    }

    @Override
    public void uncaughtException(Thread thread, Throwable why) {
      // What fails here fails again where it counts, and is told there.
    }
  }

  /**
   * The estimate: known noise at half its level, {@value #DELAY} samples later, and a little more.
   */
  static Estimate estimate() {
    Random random = new Random(LENGTH);
    double[] sent = new double[LENGTH];
    double[] back = new double[LENGTH];
    for (int i = 0; i < LENGTH; i++) {
      sent[i] = random.nextGaussian();
      back[i] = 0.1 * random.nextGaussian() + (i < DELAY ? 0 : 0.5 * sent[i - DELAY]);
    }
    return new DelayEstimator(MAX_DELAY_SECONDS)
        .estimate(Signal.of(RATE, sent), Signal.of(RATE, back));
  }
}
