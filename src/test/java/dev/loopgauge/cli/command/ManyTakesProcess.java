package dev.loopgauge.cli.command;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.LiveMeasurement;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.StimulusKind;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * A process that measures one rig again and again, each time through channels that it opens and
 * closes. Arguments: the back end, the device or nothing, the delay in samples. For each line on
 * stdin, a number, it takes as many takes, and says how many were right, refused, and failed; at a
 * wrong number it says {@value #WRONG} and ends.
 */
final class ManyTakesProcess {
  static final String WRONG = "wrong";

  private static final MeasurementPlan PLAN =
      new MeasurementPlan(new PlayedStimulus(StimulusKind.SWEEP, 0.3, -20), 1, 0.2);
  private static final Patching PATCHING =
      new Patching(new ChannelPair(2, 2), Optional.of(new ChannelPair(1, 1)));

  private final AudioBackend backend;
  private final SessionRequest request;
  private final int delay;
  private int right;
  private int refused;
  private int failed;

  private ManyTakesProcess(String backend, Optional<String> device, int delay) {
    this.backend = Adapters.ofThisComputer().named(backend);
    this.request =
        new SessionRequest(
            device, device, PATCHING.sends(), PATCHING.returns(), Optional.empty(), 0);
    this.delay = delay;
  }

  private void take() {
    try (AudioSession session = backend.open(request)) {
      Estimate estimate = new LiveMeasurement(session, PATCHING, PLAN).referenced();
      if (!(estimate instanceof Estimate.Found found)) {
        System.err.println(estimate.findings());
        refused++;
        return;
      }
      double off = Math.abs(found.measurement().delay().samples() - delay);
      if (off > Math.max(found.measurement().uncertaintySamples(), 1e-3)) {
        System.out.println(WRONG + " " + found.measurement());
        System.exit(1);
      }
      right++;
    } catch (CaptureException e) {
      System.err.println(e.kind() + " " + e.getMessage());
      failed++;
    }
  }

  /** Runs until stdin ends. */
  public static void main(String[] args) throws IOException {
    ManyTakesProcess takes =
        new ManyTakesProcess(
            args[0],
            Optional.of(args[1]).filter(device -> !device.isEmpty()),
            Integer.parseInt(args[2]));
    BufferedReader asked =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    for (String line = asked.readLine(); line != null; line = asked.readLine()) {
      for (int take = 0; take < Integer.parseInt(line); take++) {
        takes.take();
      }
      System.gc(); // So that what is left is what is held.
      System.out.println(takes.right + " " + takes.refused + " " + takes.failed);
    }
    System.exit(0);
  }
}
