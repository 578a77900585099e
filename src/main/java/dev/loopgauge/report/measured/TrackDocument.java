package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Step;
import dev.loopgauge.estimate.Track;
import dev.loopgauge.estimate.TrackPoint;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.verify.TowardsLimit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The delay through a long recording.
 *
 * @param command the command that followed it
 * @param track what was found
 * @param blockSamples the chain's block in samples of the recording, to count steps in; empty when
 *     unknown
 * @param towardsLimit when the listener's limit is passed, where the delay drifts towards it
 * @param notes what the reader must take for granted, one sentence each; for the text alone
 */
public record TrackDocument(
    String command,
    Track track,
    OptionalDouble blockSamples,
    Optional<TowardsLimit> towardsLimit,
    List<String> notes)
    implements Document {
  private static final int DECIMALS = 4;

  /** How far a step may lie off whole blocks to be told in blocks, in samples. */
  private static final double OFF_BLOCK = 0.5;

  /** Copies the notes. */
  public TrackDocument {
    notes = List.copyOf(notes);
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json =
        Document.head(
            command,
            (track.points().isEmpty() ? Outcome.NOT_TRUSTWORTHY : Outcome.MEASURED).label());
    json.put("windowSeconds", Numbers.rounded(track.windowSeconds(), DECIMALS));
    json.put("windowsLeftOut", track.leftOut());
    json.put(
        "clockDriftPpm",
        track.driftPpm().isPresent()
            ? Numbers.rounded(track.driftPpm().getAsDouble(), DECIMALS)
            : null);
    json.put(
        "clockDriftUncertaintyPpm",
        track.drift().map(d -> Numbers.roundedUp(d.uncertaintyPpm(), DECIMALS)).orElse(null));
    json.put("track", track.points().stream().map(TrackDocument::point).toList());
    json.put("steps", track.steps().stream().map(this::step).toList());
    json.put("findings", track.findings().stream().map(MeasurementJson::finding).toList());
    towardsLimit.ifPresent(limit -> json.put("towardsLimit", MeasurementJson.towards(limit)));
    return json;
  }

  private static Map<String, Object> point(TrackPoint point) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("atSeconds", Numbers.rounded(point.atSeconds(), DECIMALS));
    json.put("delaySamples", Numbers.rounded(point.delay().samples(), DECIMALS));
    json.put("uncertaintySamples", Numbers.roundedUp(point.uncertaintySamples(), DECIMALS));
    return json;
  }

  private Map<String, Object> step(Step step) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("atSeconds", Numbers.rounded(step.atSeconds(), DECIMALS));
    json.put("fromSamples", Numbers.rounded(step.fromSamples(), DECIMALS));
    json.put("toSamples", Numbers.rounded(step.toSamples(), DECIMALS));
    json.put("blocks", wholeBlocks(step));
    return json;
  }

  /** The change in whole blocks; null when it is none or the block is unknown. */
  private Integer wholeBlocks(Step step) {
    if (blockSamples.isEmpty()) {
      return null;
    }
    double blocks = step.changeSamples() / blockSamples.getAsDouble();
    double off = Math.abs(blocks - Math.rint(blocks)) * blockSamples.getAsDouble();
    return off <= OFF_BLOCK && Math.rint(blocks) != 0 ? (int) Math.rint(blocks) : null;
  }

  @Override
  public String text() {
    return new TrackText(this).toString();
  }

  /** A step's size in whole blocks, in words; empty when it is none. */
  String inBlocks(Step step) {
    Integer blocks = wholeBlocks(step);
    if (blocks == null) {
      return "";
    }
    return ", " + blocks + (Math.abs(blocks) == 1 ? " block" : " blocks");
  }
}
