package dev.loopgauge.chain.file;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A first chain file, from the answers to at most ten questions: commented YAML. */
public final class ChainDraft {
  private static final String HOUSE = "house";

  private final Map<DraftQuestion, String> answers = new EnumMap<>(DraftQuestion.class);
  private final StringBuilder yaml = new StringBuilder();
  private int nextPatch;

  private ChainDraft(Map<DraftQuestion, String> given) {
    for (DraftQuestion question : DraftQuestion.values()) {
      String answer = given.getOrDefault(question, question.usual()).strip();
      question
          .refuse(answer)
          .ifPresent(
              why -> {
                throw new IllegalArgumentException(question.text() + " '" + answer + "': " + why);
              });
      answers.put(question, answer);
    }
    nextPatch = Integer.parseInt(answers.get(DraftQuestion.REFERENCE)) + 1;
  }

  /**
   * The text of the file; what is not answered is as {@linkplain DraftQuestion#usual usual}.
   *
   * @throws IllegalArgumentException when an answer is refused
   */
  public static String yaml(Map<DraftQuestion, String> answers) {
    return new ChainDraft(answers).written();
  }

  private String written() {
    head();
    stages();
    paths();
    positions();
    mixes();
    return yaml.toString();
  }

  private void head() {
    line("chain: \"%s\"", DraftQuestion.NAME);
    line("sample-rate: %s          # Hz, one word clock", DraftQuestion.SAMPLE_RATE);
    if (hasHost()) {
      line("block-size: %s              # samples, of the plug-in host", DraftQuestion.BLOCK_SIZE);
    }
    line("air-temperature: 20         # degrees C, where the audience is");
    if (hasReference()) {
      line("# The cable straight from a send to a return: the sound card's own delay cancels.");
      yaml.append(
          String.format(Locale.ROOT, "reference: { send: %1$s, return: %1$s }\n", reference()));
    }
  }

  private void stages() {
    line(
        "# What adds delay. State each in the unit of its data sheet: samples, ms, blocks,"
            + " packets,");
    line("# metres, feet. Beside it: tolerance-samples or tolerance-ms, note, reported-by.");
    line("stages:");
    line("  stage-box-in: { samples: %s, tolerance-samples: 1 }", DraftQuestion.CONVERTER_SAMPLES);
    line("  desk: { ms: %s, tolerance-ms: 0.05 }", DraftQuestion.DESK_MS);
    if (hasHost()) {
      line("  host-blocks: { blocks: %s }", DraftQuestion.HOST_BLOCKS);
    }
    line("  stage-box-out: { samples: %s, tolerance-samples: 1 }", DraftQuestion.CONVERTER_SAMPLES);
    if (listeners().contains("wedge")) {
      line("  wedge-throw: { metres: 1.8 }   # from wedge to ear: measure yours");
    }
  }

  private void paths() {
    line("# The way from a source to one listener. Performers are fed from before the host.");
    line("paths:");
    for (String listener : listeners()) {
      yaml.append("  vocal-" + listener + ":\n");
      yaml.append("    listener: " + listener + "\n");
      yaml.append("    input: vocal\n");
      yaml.append("    stages: [" + String.join(", ", stagesOf(listener)) + "]\n");
      if (listener.equals(HOUSE)) {
        line("    loudspeaker: main-pa        # its air comes from the positions below");
      }
      if (hasReference()) {
        yaml.append(
            String.format(Locale.ROOT, "    patch: { send: %1$d, return: %1$d }\n", nextPatch++));
      }
    }
  }

  private List<String> stagesOf(String listener) {
    List<String> stages = new ArrayList<>(List.of("stage-box-in", "desk"));
    if (hasHost() && (listener.equals(HOUSE) || listener.equals("stream"))) {
      stages.add("host-blocks");
    }
    if (!listener.equals("stream")) {
      stages.add("stage-box-out");
    }
    if (listener.equals("wedge")) {
      stages.add("wedge-throw");
    }
    return stages;
  }

  private void positions() {
    if (listeners().contains(HOUSE)) {
      line("# Seats: how far the source itself and each loudspeaker are from there.");
      line("positions:");
      yaml.append(
          String.format(
              Locale.ROOT,
              "  front-row: { direct-metres: %s, throw-metres: { main-pa: %s } }\n",
              answers.get(DraftQuestion.DIRECT_METRES),
              answers.get(DraftQuestion.THROW_METRES)));
    }
  }

  private void mixes() {
    List<String> names = listeners().stream().map(listener -> "vocal-" + listener).toList();
    if (names.size() > 1) {
      line("# Paths that are heard together.");
      yaml.append("mixes:\n  all: [" + String.join(", ", names) + "]\n");
    }
  }

  private List<String> listeners() {
    return DraftQuestion.listeners(answers.get(DraftQuestion.LISTENERS));
  }

  private boolean hasHost() {
    return Integer.parseInt(answers.get(DraftQuestion.BLOCK_SIZE)) > 0;
  }

  private boolean hasReference() {
    return Integer.parseInt(reference()) > 0;
  }

  private String reference() {
    return answers.get(DraftQuestion.REFERENCE);
  }

  private void line(String text) {
    yaml.append(text).append('\n');
  }

  private void line(String text, DraftQuestion answer) {
    line(String.format(Locale.ROOT, text, answers.get(answer)));
  }
}
