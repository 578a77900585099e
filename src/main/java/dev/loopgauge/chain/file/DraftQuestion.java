package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Conditions;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.Patch;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** What is asked of somebody who wants a first chain file, in this order. */
public enum DraftQuestion {
  /** The rig's name. */
  NAME("What is the rig called?", "My rig"),
  /** The word clock. */
  SAMPLE_RATE("At which sample rate does it run, in Hz?", "48000"),
  /** The console. */
  DESK_MS("How long does the desk take from input to output, in ms?", "0.8"),
  /** The converters. */
  CONVERTER_SAMPLES(
      "How long does one pass through the stage box's converter take, in samples?", "12"),
  /** The plug-in host. */
  BLOCK_SIZE("At which block size does the plug-in host run, in samples? 0 without a host.", "64"),
  /** How the host buffers. */
  HOST_BLOCKS("How many blocks does the host add?", "2"),
  /** Who hears it. */
  LISTENERS("Who listens? Any of house, in-ear, wedge, stream, with commas.", "house, in-ear"),
  /** Where the front row is. */
  DIRECT_METRES("How far is the front row from the singer, in metres?", "3"),
  /** And from its loudspeaker. */
  THROW_METRES("How far is the front row from its loudspeaker, in metres?", "6"),
  /** The cable straight back. */
  REFERENCE(
      "On which send and return of the measuring sound card is the reference cable? 0 without one.",
      "1");

  private static final Pattern NUMBER = Pattern.compile("\\d{1,9}(\\.\\d{1,9})?");
  private static final Pattern BETWEEN = Pattern.compile("[,\\s]+");
  private static final Pattern WHOLE = Pattern.compile("\\d{1,9}");

  private final String text;
  private final String usual;

  DraftQuestion(String text, String usual) {
    this.text = text;
    this.usual = usual;
  }

  /** The question, one or two sentences. */
  public String text() {
    return text;
  }

  /** The answer that an empty line stands for. */
  public String usual() {
    return usual;
  }

  /** What is wrong with an answer, in words; empty where it is one. */
  public Optional<String> refuse(String answer) {
    String stripped = answer.strip();
    return switch (this) {
      case NAME -> refuseName(stripped);
      case SAMPLE_RATE -> refuseWhole(stripped, SampleRate.LOWEST, SampleRate.HIGHEST);
      case BLOCK_SIZE -> refuseWhole(stripped, 0, Conditions.LARGEST_BLOCK);
      case LISTENERS -> refuseListeners(stripped);
      case REFERENCE -> refuseWhole(stripped, 0, Patch.HIGHEST - Listener.values().length);
      case DESK_MS, CONVERTER_SAMPLES, HOST_BLOCKS, DIRECT_METRES, THROW_METRES ->
          refuseNumber(stripped);
    };
  }

  /** Whether it is asked, after the answers so far. */
  public boolean isAsked(Map<DraftQuestion, String> answers) {
    return switch (this) {
      case HOST_BLOCKS -> !answers.getOrDefault(BLOCK_SIZE, BLOCK_SIZE.usual).strip().equals("0");
      case DIRECT_METRES, THROW_METRES ->
          listeners(answers.getOrDefault(LISTENERS, LISTENERS.usual)).contains("house");
      default -> true;
    };
  }

  static List<String> listeners(String answer) {
    return BETWEEN.splitAsStream(answer.strip()).distinct().toList();
  }

  private static Optional<String> refuseName(String answer) {
    if (answer.contains("\uFFFD")) {
      return Optional.of("some letters can't be read: is the terminal set to UTF-8?");
    }
    return answer.isEmpty() || answer.length() > 100 || answer.matches(".*[\\p{Cc}\"\\\\].*")
        ? Optional.of("write a name of 1 to 100 letters, without quotation marks")
        : Optional.empty();
  }

  private static Optional<String> refuseNumber(String answer) {
    if (answer.matches("\\d+,\\d+")) {
      return Optional.of("did you mean " + answer.replace(',', '.') + "? write a decimal point");
    }
    return NUMBER.matcher(answer).matches() && Double.parseDouble(answer) <= Delay.LARGEST
        ? Optional.empty()
        : Optional.of("write a number such as 0.8, without a unit");
  }

  private static Optional<String> refuseWhole(String answer, int lowest, int highest) {
    boolean fits =
        WHOLE.matcher(answer).matches()
            && Integer.parseInt(answer) >= lowest
            && Integer.parseInt(answer) <= highest;
    return fits
        ? Optional.empty()
        : Optional.of("write a whole number from " + lowest + " to " + highest);
  }

  private static Optional<String> refuseListeners(String answer) {
    return listeners(answer).stream()
        .filter(name -> !PathReader.LISTENERS.containsKey(name))
        .findFirst()
        .map(
            name ->
                "'"
                    + name
                    + "' is no listener: write any of "
                    + String.join(", ", PathReader.LISTENERS.keySet()));
  }
}
