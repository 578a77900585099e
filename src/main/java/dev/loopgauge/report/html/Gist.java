package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Fields;
import dev.loopgauge.report.form.Numbers;
import java.util.List;
import java.util.Optional;

/** What a document that is no measurement of one return says, in a sentence. */
final class Gist {
  private Gist() {}

  /** The sentence; empty for a measurement, which has its own verdict. */
  static Optional<String> of(Reading reading) {
    Fields fields = reading.fields();
    if (reading.measures()) {
      return Optional.empty();
    }
    if (reading.outcome().equals("error")) {
      return Optional.of(reading.source() + ": " + Telling.verdict(reading));
    }
    if (fields.has("fit")) {
      return fields.part("fit").map(Gist::series);
    }
    if (fields.has("track")) {
      return Optional.of(track(fields));
    }
    if (fields.has("soak")) {
      return fields.part("soak").map(soak -> soak(reading.outcome(), soak));
    }
    if (fields.has("channels")) {
      return Optional.of(
          "%d of %d channels measured."
              .formatted(
                  fields.parts("channels").stream()
                      .filter(channel -> channel.part("measurement").isPresent())
                      .count(),
                  fields.parts("channels").size()));
    }
    return plans(fields, reading.outcome());
  }

  private static Optional<String> plans(Fields fields, String outcome) {
    if (fields.has("pairs")) {
      return Optional.of(
          "%d of %d pairs of channels have sound in common."
              .formatted(
                  fields.parts("pairs").stream()
                      .filter(pair -> pair.number("delaySamples").isPresent())
                      .count(),
                  fields.parts("pairs").size()));
    }
    if (fields.has("choices")) {
      return Optional.of(plan(fields.parts("choices")));
    }
    if (fields.has("conflicts")) {
      return Optional.of(
          switch (outcome) {
            case "aligned" -> "The delays to add make the paths of each mix meet.";
            case "conflicting" -> "The delays to add conflict: a path needs two at once.";
            default -> "The delays to add bring a performer's path over its limit.";
          });
    }
    return Optional.of(budget(fields.parts("paths")));
  }

  private static String series(Fields fit) {
    return "The host runs as %s blocks plus %s samples."
        .formatted(
            fit.number("roundedBlocks").map(blocks -> Numbers.brief(blocks, 0)).orElse("?"),
            fit.number("fixedSamples").map(fixed -> Numbers.brief(fixed, 1)).orElse("?"));
  }

  private static String track(Fields fields) {
    int windows = fields.parts("track").size();
    int steps = fields.parts("steps").size();
    if (windows == 0) {
      return "The recording has no delay that can be trusted.";
    }
    return "Through the recording the delay "
        + (steps == 0
            ? "made no step."
            : steps == 1 ? "made 1 step." : "made " + steps + " steps.");
  }

  private static String soak(String outcome, Fields soak) {
    String time =
        soak.number("heardSeconds")
            .map(seconds -> Numbers.brief(seconds / 60, 1) + " min")
            .orElse("");
    return switch (outcome) {
      case "clean" -> "Clean for " + time + ": nothing was lost, the delay stayed.";
      case "broke-off" -> "The soak broke off after " + time + ".";
      default -> "Not clean: something happened within " + time + ".";
    };
  }

  private static String plan(List<Fields> choices) {
    if (choices.isEmpty()) {
      return "No block size keeps everybody within limits.";
    }
    Fields best = choices.get(0);
    return "Block %s at %s kHz keeps everybody within limits."
        .formatted(
            best.number("blockSize").map(size -> Numbers.brief(size, 0)).orElse("?"),
            best.number("sampleRateHz").map(hz -> Numbers.brief(hz / 1000, 3)).orElse("?"));
  }

  private static String budget(List<Fields> paths) {
    List<String> over =
        paths.stream()
            .filter(path -> path.text("standing").equals(Optional.of("over")))
            .flatMap(path -> path.text("name").stream())
            .toList();
    return over.isEmpty()
        ? "By its budget, every path keeps its listener's limit."
        : "By its budget, over its listener's limit: " + VerdictPart.listed(over) + ".";
  }
}
