package dev.loopgauge.job.recorded;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.verify.verdict.JudgedReading;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * A small estimate of made-up noise and its text, made beside what a program does before it has a
 * recording. The virtual machine loads and compiles meanwhile what they need, so that the first
 * that count take a tenth less of a short command's time.
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
      text();
    }

    @Override
    public void uncaughtException(Thread thread, Throwable why) {
      // What fails here fails again where it counts, and is told there.
    }
  }

  /** What is told of it. */
  static String text() {
    JudgedReading judged = ChosenPath.judge(Optional.empty(), estimate(), Optional.empty());
    return MeasurementDocument.of("analyze", judged, List.of()).text();
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
