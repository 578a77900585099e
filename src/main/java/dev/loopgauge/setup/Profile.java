package dev.loopgauge.setup;

import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.signal.SampleRate;
import java.util.Optional;

/**
 * All that a measurement needs to know about one place: the device, the patching and what to play.
 *
 * @param backend the back end's name
 * @param output the device to play to; empty for the back end's own choice
 * @param input the device to record from; empty for the back end's own choice
 * @param patching what is patched where
 * @param rate the sample rate; empty for the back end's own choice
 * @param bufferSamples the device buffer in samples, 0 for the back end's own choice
 * @param plan what is played
 * @param calibration the sound card's own delay, where it is known
 */
public record Profile(
    String backend,
    Optional<String> output,
    Optional<String> input,
    Patching patching,
    Optional<SampleRate> rate,
    int bufferSamples,
    MeasurementPlan plan,
    Optional<Calibration> calibration) {
  /** What a session for this profile shall open. */
  public SessionRequest request() {
    return new SessionRequest(
        output, input, patching.sends(), patching.returns(), rate, bufferSamples);
  }

  /** This profile with a calibration. */
  public Profile with(Calibration measured) {
    return new Profile(
        backend, output, input, patching, rate, bufferSamples, plan, Optional.of(measured));
  }

  /** This profile with another plan. */
  public Profile with(MeasurementPlan other) {
    return new Profile(backend, output, input, patching, rate, bufferSamples, other, calibration);
  }

  /** This profile with something else patched. */
  public Profile with(Patching other) {
    return new Profile(backend, output, input, other, rate, bufferSamples, plan, calibration);
  }
}
