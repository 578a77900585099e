package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.LiveMeasurement;
import dev.loopgauge.measure.Playing;
import dev.loopgauge.setup.CalibrationStore;
import dev.loopgauge.setup.CalibrationStore.Lookup;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One measurement through an open session, by the best way round the sound card that is at hand.
 *
 * @param session opened as the profile asks
 * @param profile what to measure
 * @param arrival which arrival is measured where there are several
 * @param consent asked before each sound
 * @param playing what is played again where sound is lost, and who is told
 */
record LiveReading(
    AudioSession session,
    Profile profile,
    ArrivalChoice arrival,
    Consent consent,
    Playing playing) {
  /** The same where a turn that lost sound is played again. */
  LiveReading playingAgain() {
    return new LiveReading(
        session, profile, arrival, consent, Playing.again(new ToldTurns(consent, profile)));
  }

  /**
   * Against the reference where one is patched, less the skew of the channels where that is kept;
   * else less a kept calibration that holds.
   *
   * @param store where calibrations are kept
   */
  Repeatable repeatable(CalibrationStore store) throws SetupException {
    if (profile.patching().reference().isPresent()) {
      Optional<Calibration> skew =
          CalibrationStore.skew(made(store), session.info(), profile.patching());
      return skew.isPresent() ? new LessSkew(live(), skew.get()) : live()::referenced;
    }
    Lookup lookup = lookup(store);
    return lookup instanceof Lookup.Holds holds
        ? () -> live().lessCable(holds.calibration(), Method.SAMPLE_LOCKED)
        : () -> live().uncalibrated(((Lookup.Refused) lookup).reason(), hint());
  }

  /**
   * Through a program of the audio server and no sound card, so that nothing is to be taken off.
   * Against the reference where one is patched.
   *
   * @throws CaptureException when the sound failed
   */
  Estimate throughProgram() throws CaptureException {
    if (profile.patching().reference().isPresent()) {
      return live().referenced();
    }
    Estimate estimate = live().withCard();
    return estimate instanceof Estimate.Found found
        ? new Estimate.Found(found.measurement().withMethod(Method.SAMPLE_LOCKED), found.findings())
        : estimate;
  }

  private Lookup lookup(CalibrationStore store) throws SetupException {
    if (!session.info().sampleLocked()) {
      return new Lookup.Refused(session.info().backend() + " shifts it with each opening");
    }
    return CalibrationStore.choose(made(store), session.info(), profile.patching().rig());
  }

  /** The profile's own before all others. */
  private List<Calibration> made(CalibrationStore store) throws SetupException {
    List<Calibration> made = new ArrayList<>(profile.calibration().stream().toList());
    made.addAll(store.all());
    return made;
  }

  private String hint() {
    String reference =
        "patch a second send straight to a second return and name them by --reference-send and"
            + " --reference-return";
    if (session.info().sampleLocked()) {
      return reference + ", or run `loopgauge calibrate`";
    }
    return consent.makesSound() ? reference + ", or `measure --calibrate`" : reference;
  }

  /**
   * A patch cable first, then the rig, with somebody patching in between.
   *
   * @param now the date for the calibration
   */
  Estimate afterCable(Instant now) throws CaptureException, IOException {
    ChannelPair rig = profile.patching().rig();
    consent.announce(announcement());
    consent.waitFor(
        "1. Join send %d straight to return %d with a cable.".formatted(rig.send(), rig.ret()));
    Estimate cable = live().withCard();
    if (!(cable instanceof Estimate.Found found)) {
      consent.say("That was the cable; the rig was not measured.");
      return cable;
    }
    consent.waitFor(
        "2. Patch send %d into the rig and the rig's output to return %d."
            .formatted(rig.send(), rig.ret()));
    return live().lessCable(calibration(found.measurement(), now), Method.CALIBRATED);
  }

  private Calibration calibration(Measurement cable, Instant now) {
    return Calibration.of(
        session.info(),
        profile.patching(),
        cable.delay().samples(),
        cable.uncertaintySamples(),
        now);
  }

  private LiveMeasurement live() {
    return new LiveMeasurement(session, profile.patching(), profile.plan(), arrival, playing);
  }

  /** How long one take of it is, in seconds. */
  double takeSeconds() {
    return profile.plan().takeSeconds(session.info(), profile.patching().reference().isPresent());
  }

  /** What is about to be played. */
  String announcement() {
    return Announcement.of(
        session.info(), profile.patching().sends(), profile.plan(), playing.spareTurns());
  }
}
