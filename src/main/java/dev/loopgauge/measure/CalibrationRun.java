package dev.loopgauge.measure;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.Measurement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * Measures a patch cable in the place of the rig, so that the result can be kept: the sound card's
 * own delay, or, where a reference is patched, the skew of the two pairs of channels. The channels
 * are opened {@value #OPENINGS} times, because what a later opening will differ by is part of the
 * uncertainty.
 *
 * @param backend where to open the channels
 * @param request what to open: the sends and returns of both cables
 * @param patching what the cables join
 * @param plan what is played each time
 */
public record CalibrationRun(
    AudioBackend backend, SessionRequest request, Patching patching, MeasurementPlan plan) {
  /** How often the channels are opened. */
  public static final int OPENINGS = 3;

  /**
   * The most that two pairs of channels of one card can differ by, in samples at any rate: one goes
   * through an ADC of 23 and a DAC of 27 samples, the other stays digital. (Group delays of
   * ADAU1961, data sheet rev. 0, table 4, and AK4436, data sheet 016001934-E-00, section 9.)
   */
  public static final double LARGEST_SKEW_SAMPLES = 50;

  /** What came of it. */
  public sealed interface Outcome {
    /** A calibration to keep. */
    record Done(Calibration calibration) implements Outcome {}

    /** No trustworthy number, and why. */
    record Refused(List<Finding> findings) implements Outcome {
      /** Copies the list. */
      public Refused {
        findings = List.copyOf(findings);
      }
    }
  }

  /**
   * Opens, plays and closes, {@value #OPENINGS} times.
   *
   * @param now the date for the calibration
   * @throws CaptureException when the sound failed, or something else was opened than before
   */
  public Outcome run(Instant now) throws CaptureException {
    List<SessionInfo> infos = new ArrayList<>();
    List<Measurement> measured = new ArrayList<>();
    for (int i = 0; i < OPENINGS; i++) {
      try (AudioSession session = backend.open(request)) {
        infos.add(session.info());
        Estimate estimate = measure(session);
        if (!(estimate instanceof Estimate.Found found)) {
          return new Outcome.Refused(estimate.findings());
        }
        if (isNoCable(found.measurement())) {
          double samples = found.measurement().delay().samples();
          return new Outcome.Refused(
              List.of(LiveFindings.tooMuchSkew(patching.rig(), samples, LARGEST_SKEW_SAMPLES)));
        }
        measured.add(found.measurement());
      }
    }
    return new Outcome.Done(
        Calibration.of(same(infos), patching, mean(measured), uncertainty(measured), now));
  }

  private Estimate measure(AudioSession session) throws CaptureException {
    LiveMeasurement live =
        new LiveMeasurement(session, patching, plan, ArrivalChoice.UNDECIDED, Playing.AGAIN);
    return patching.reference().isPresent() ? live.referenced() : live.withCard();
  }

  private boolean isNoCable(Measurement measured) {
    return patching.reference().isPresent()
        && Math.abs(measured.delay().samples()) > LARGEST_SKEW_SAMPLES;
  }

  private static SessionInfo same(List<SessionInfo> infos) throws CaptureException {
    if (infos.stream().distinct().count() > 1) {
      throw new CaptureException(
          CaptureException.Kind.UNSUPPORTED_FORMAT,
          "the device opened differently each time: " + infos,
          "leave rate and block size alone meanwhile, then calibrate again");
    }
    return infos.get(0);
  }

  private static double mean(List<Measurement> measured) {
    return measured.stream().mapToDouble(one -> one.delay().samples()).average().orElseThrow();
  }

  /**
   * Expanded, k = 2: what one opening is uncertain by, and how far the next opening may lie from
   * the mean of n, s sqrt(1 + 1/n) (JCGM 100:2008, type A).
   */
  private static double uncertainty(List<Measurement> measured) {
    double mean = mean(measured);
    double one =
        measured.stream().mapToDouble(Measurement::uncertaintySamples).average().orElseThrow()
            / Measurement.COVERAGE_FACTOR;
    double squares =
        measured.stream().mapToDouble(m -> Math.pow(m.delay().samples() - mean, 2)).sum();
    double scatter = squares / (OPENINGS - 1) * (1 + 1.0 / OPENINGS);
    return Measurement.COVERAGE_FACTOR * Math.sqrt(one * one + scatter);
  }
}
