package dev.loopgauge.report.rig;

import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.signal.SampleRate;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a profile says.
 *
 * @param command the command that shows it
 * @param name its name
 * @param file its file
 * @param profile what it says
 */
public record ProfileDocument(String command, String name, String file, Profile profile)
    implements Document {
  private static final int DECIMALS = 3;

  @Override
  public String text() {
    Sheet sheet =
        new Sheet()
            .line(name + ", in " + file)
            .row("back end", profile.backend())
            .row("output", profile.output().orElse("the usual one"))
            .row("input", profile.input().orElse("the usual one"))
            .row("path", pair(profile.patching().rig()));
    profile.patching().reference().ifPresent(pair -> sheet.row("reference", pair(pair)));
    sheet
        .row("rate", profile.rate().map(rate -> rate.hertz() + " Hz").orElse("the device's"))
        .row(
            "buffer",
            profile.bufferSamples() == 0
                ? "the back end's choice"
                : profile.bufferSamples() + " samples")
        .row("plays", plan(profile.plan()));
    profile
        .calibration()
        .ifPresent(
            made ->
                sheet.row("calibrated", made.measuredAt() + ", " + Calibrations.conditions(made)));
    return sheet.row("use it", "loopgauge measure --profile '" + name + "'").toString();
  }

  private static String pair(ChannelPair pair) {
    return "send " + pair.send() + " to return " + pair.ret();
  }

  private static String plan(MeasurementPlan plan) {
    return plan.stimulus().kind().label()
        + " of "
        + Numbers.brief(plan.stimulus().seconds(), DECIMALS)
        + " s at "
        + Numbers.brief(plan.stimulus().levelDbfs(), 1)
        + " dBFS, repeat "
        + plan.repeats()
        + ", delays up to "
        + Numbers.brief(plan.maxDelaySeconds(), DECIMALS)
        + " s";
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head(command, "profile");
    json.put("name", name);
    json.put("file", file);
    json.put("profile", settings());
    return json;
  }

  private Map<String, Object> settings() {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("backend", profile.backend());
    json.put("output", profile.output().orElse(null));
    json.put("input", profile.input().orElse(null));
    json.put("send", profile.patching().rig().send());
    json.put("return", profile.patching().rig().ret());
    json.put("referenceSend", profile.patching().reference().map(ChannelPair::send).orElse(null));
    json.put("referenceReturn", profile.patching().reference().map(ChannelPair::ret).orElse(null));
    json.put("sampleRateHz", profile.rate().map(SampleRate::hertz).orElse(null));
    json.put("bufferSamples", profile.bufferSamples() == 0 ? null : profile.bufferSamples());
    MeasurementPlan plan = profile.plan();
    json.put("stimulus", plan.stimulus().kind().label());
    json.put("stimulusSeconds", Numbers.rounded(plan.stimulus().seconds(), DECIMALS));
    json.put("levelDbfs", Numbers.rounded(plan.stimulus().levelDbfs(), DECIMALS));
    json.put("repeats", plan.repeats());
    json.put("maxDelaySeconds", Numbers.rounded(plan.maxDelaySeconds(), DECIMALS));
    json.put("calibration", profile.calibration().map(Calibrations::json).orElse(null));
    return json;
  }
}
