package dev.loopgauge.job.live;

import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.verify.ReportedDelay;
import java.io.IOException;
import java.util.Optional;

/**
 * Asks before sound leaves the card.
 *
 * @param console where to ask
 * @param makesSound whether there is anything to ask: the built-in rig makes no sound
 * @param given whether {@code --yes} has answered already
 */
public record Consent(Console console, boolean makesSound, boolean given) {
  /**
   * To be called before a device is touched.
   *
   * @throws UsageException when nobody has agreed and nobody is there to ask
   */
  public void requireSomebody() {
    if (makesSound && !given && !console.terminal()) {
      throw new UsageException(
          "sound would leave the card and nobody is at a terminal to agree; nothing was played",
          "--yes agrees: first mute the loudspeakers and take in-ears out");
    }
  }

  /** The same once it was given. */
  Consent agreed() {
    return new Consent(console, makesSound, true);
  }

  /** Says what will be played, where it sounds at all. */
  void announce(String announcement) {
    if (makesSound) {
      console.err().println(announcement);
      console.err().println("Mute the loudspeakers, take in-ears out.");
    }
  }

  /**
   * Says what will be played and waits for Enter, where that is needed.
   *
   * @param announcement where and how loud, one or more sentences
   * @throws UsageException when the terminal closes instead
   */
  public void ask(String announcement) throws IOException {
    announce(announcement);
    if (makesSound && !given) {
      waitFor("");
    }
  }

  /**
   * Says what to do and waits for Enter, whatever was agreed to before.
   *
   * @param task what to do first, a sentence, or nothing
   * @throws UsageException when the terminal closes instead
   */
  void waitFor(String task) throws IOException {
    console.err().println((task + " Enter to play, Ctrl-C to stop.").strip());
    if (console.in().readLine() == null) {
      throw new UsageException(
          "the terminal closed before anybody pressed Enter; nothing more was played",
          "run it at a terminal, or with --yes");
    }
  }

  /**
   * Asks what is reported now, until the answer is a number of samples or nothing.
   *
   * @throws UsageException when the terminal closes instead
   */
  Optional<ReportedDelay> askReported() throws IOException {
    while (true) {
      console
          .err()
          .println("How many samples are reported for it now? 0 if none, Enter if you can't see.");
      String answer = console.in().readLine();
      if (answer == null) {
        throw new UsageException(
            "the terminal closed before it was said what is reported",
            "--reported-samples says it beforehand");
      }
      if (answer.isBlank()) {
        return Optional.empty();
      }
      if (answer.strip().matches("[0-9]{1,7}([.][0-9]{1,6})?")) {
        return Optional.of(ReportedDelay.ofSamples(Double.parseDouble(answer.strip())));
      }
    }
  }

  /** Asks whether to measure again at another block size; nobody at a terminal says no. */
  boolean wantsAnother(int blockSize) throws IOException {
    if (given || !console.terminal()) {
      return false;
    }
    console
        .err()
        .println(
            "More than one cause fits. At a block of %d they read apart: y sets it and measures again, Enter leaves it."
                .formatted(blockSize));
    String answer = console.in().readLine();
    return answer != null && answer.strip().equalsIgnoreCase("y");
  }

  /** Says something on the way. */
  void say(String sentence) {
    console.err().println(sentence);
  }
}
