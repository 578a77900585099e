package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.FrameRate;
import dev.loopgauge.chain.Picture;
import dev.loopgauge.chain.Stage;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the {@code pictures} of a chain file. */
final class PictureReader implements EntryReader<Picture> {
  private static final String RATE_KEY = "frame-rate";
  private static final List<String> DELAYS = List.of("frames", "ms", "stages");
  private static final List<String> KEYS = List.of(RATE_KEY, "frames", "ms", "stages");
  private static final Pattern RATE = Pattern.compile("(\\d{1,9})(?:/(\\d{1,9}))?");

  private final Map<String, Stage> stages;

  PictureReader(Map<String, Stage> stages) {
    this.stages = stages;
  }

  @Override
  public Picture read(String name, YamlValue picture) throws ChainFormatException {
    YamlFields fields = picture.fields("a picture", KEYS);
    List<String> stated = fields.among(DELAYS);
    if (stated.isEmpty()) {
      throw picture.refuseKey(
          "a delay in the picture", "none", "state one of " + String.join(", ", DELAYS));
    }
    fields.checkSingle(
        stated, "one delay in the picture", "keep one of them, or make stages of both");
    Optional<Delay> delay = delay(fields);
    List<String> passed =
        fields
            .optional("stages", value -> value.namesOf("stage", stages.keySet()))
            .orElse(List.of());
    if (delay.orElse(null) instanceof Delay.Frames || hasFrames(passed)) {
      fields.required(RATE_KEY, RATE_KEY + ": 25");
    }
    return new Picture(name, fields.optional(RATE_KEY, PictureReader::frameRate), delay, passed);
  }

  private boolean hasFrames(List<String> passed) {
    for (String stage : passed) {
      if (stages.get(stage).delay() instanceof Delay.Frames) {
        return true;
      }
    }
    return false;
  }

  private static Optional<Delay> delay(YamlFields fields) throws ChainFormatException {
    Optional<Delay> frames =
        fields.optional("frames", value -> new Delay.Frames(number("frames", value)));
    return frames.isPresent()
        ? frames
        : fields.optional("ms", value -> new Delay.Milliseconds(number("ms", value)));
  }

  private static double number(String unit, YamlValue value) throws ChainFormatException {
    return value.number(unit, 0, Delay.LARGEST);
  }

  private static FrameRate frameRate(YamlValue value) throws ChainFormatException {
    String text = value.scalar().orElse("");
    Matcher rate = RATE.matcher(text);
    if (rate.matches()) {
      int numerator = Integer.parseInt(rate.group(1));
      int denominator = rate.group(2) == null ? 1 : Integer.parseInt(rate.group(2));
      if (FrameRate.inRange(numerator, denominator)) {
        return new FrameRate(numerator, denominator);
      }
    }
    Optional<FrameRate> inTheTrade = FrameRate.inTheTrade(text);
    if (inTheTrade.isPresent()) {
      return inTheTrade.get();
    }
    throw value.refuse(
        "a frame rate such as 25 or 60000/1001, "
            + (FrameRate.LOWEST + " to " + FrameRate.HIGHEST + " frames a second"),
        FrameRate.nearestInUse(text)
            .map(meant -> "did you mean " + meant + "?")
            .orElse("write a whole number or an exact fraction"));
  }
}
