package dev.loopgauge.chain;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the {@code pictures} of a chain file. */
final class PictureReader {
  private static final List<String> KEYS = List.of("frame-rate", "stages");
  private static final Pattern RATE = Pattern.compile("(\\d{1,9})(?:/(\\d{1,9}))?");
  private static final Map<String, String> EXACT =
      Map.of(
          "23.976", "24000/1001",
          "23.98", "24000/1001",
          "29.97", "30000/1001",
          "59.94", "60000/1001",
          "119.88", "120000/1001");

  private final Map<String, Stage> stages;

  PictureReader(Map<String, Stage> stages) {
    this.stages = stages;
  }

  Picture read(String name, YamlValue picture) throws ChainFormatException {
    YamlFields fields = picture.fields("a picture", KEYS);
    List<String> passed =
        fields.required("stages", "stages: [camera]").namesOf("stage", stages.keySet());
    if (passed.stream().anyMatch(stage -> stages.get(stage).delay() instanceof Delay.Frames)) {
      fields.required("frame-rate", "frame-rate: 25");
    }
    return new Picture(name, fields.optional("frame-rate", PictureReader::frameRate), passed);
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
    throw value.refuse(
        "a frame rate such as 25 or 60000/1001, "
            + (FrameRate.LOWEST + " to " + FrameRate.HIGHEST + " frames a second"),
        "write " + EXACT.getOrDefault(text, "a whole number or an exact fraction"));
  }
}
