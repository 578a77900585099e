package dev.loopgauge.report.rig;

import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.util.Optional;

/** A profile, as documents hold it; null where the back end or the device decides. */
public record ProfileRecord(
    String backend,
    Optional<String> output,
    Optional<String> input,
    int send,
    int ret,
    Optional<Integer> referenceSend,
    Optional<Integer> referenceReturn,
    Optional<Integer> sampleRateHz,
    Optional<Integer> bufferSamples,
    String stimulus,
    BigDecimal stimulusSeconds,
    BigDecimal levelDbfs,
    int repeats,
    BigDecimal maxDelaySeconds,
    Optional<CalibrationRecord> calibration) {
  private static final int DECIMALS = 3;

  /** Of a profile. */
  static ProfileRecord of(Profile profile) {
    Optional<ChannelPair> reference = profile.patching().reference();
    MeasurementPlan plan = profile.plan();
    return new ProfileRecord(
        profile.backend(),
        profile.output(),
        profile.input(),
        profile.patching().rig().send(),
        profile.patching().rig().ret(),
        reference.map(ChannelPair::send),
        reference.map(ChannelPair::ret),
        profile.rate().map(SampleRate::hertz),
        Optional.of(profile.bufferSamples()).filter(samples -> samples != 0),
        plan.stimulus().kind().label(),
        Numbers.rounded(plan.stimulus().seconds(), DECIMALS),
        Numbers.rounded(plan.stimulus().levelDbfs(), DECIMALS),
        plan.repeats(),
        Numbers.rounded(plan.maxDelaySeconds(), DECIMALS),
        profile.calibration().map(CalibrationRecord::of));
  }

  /** Tells it. */
  void tell(Sheet sheet) {
    sheet
        .row("back end", backend)
        .row("output", output.orElse("the default device"))
        .row("input", input.orElse("the default device"))
        .row("path", "send " + send + " to return " + ret);
    referenceSend.ifPresent(
        from ->
            sheet.row("reference", "send " + from + " to return " + referenceReturn.orElse(from)));
    sheet
        .row("rate", sampleRateHz.map(rate -> rate + " Hz").orElse("the device's"))
        .row(
            "buffer",
            bufferSamples.map(samples -> samples + " samples").orElse("the back end's choice"))
        .row("plays", plan());
    calibration.ifPresent(
        made -> sheet.row("calibrated", made.measuredAt() + ", " + made.conditions()));
  }

  private String plan() {
    return (stimulus + " of " + Numbers.brief(stimulusSeconds.doubleValue(), DECIMALS) + " s at ")
        + (Numbers.brief(levelDbfs.doubleValue(), 1) + " dBFS, repeat " + repeats)
        + (", delays up to " + Numbers.brief(maxDelaySeconds.doubleValue(), DECIMALS) + " s");
  }
}
