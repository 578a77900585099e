package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.ReportedDelay;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Asks before sound leaves the card.
 *
 * @param person whom to ask
 * @param makesSound whether there is anything to ask: the built-in rig makes no sound
 * @param given whether it was given already
 * @param told whether the person has heard already what will be played
 */
record Consent(Person person, boolean makesSound, boolean given, boolean told) {
  private static final SampleRate USUAL_RATE = new SampleRate(48_000);
  private static final int USUAL_BUFFER = 1_024;

  /** Asked before a back end plays. */
  static Consent of(Person person, AudioBackend backend, boolean given) {
    return new Consent(person, !backend.name().equals(BuiltInRig.NAME), given, false);
  }

  /**
   * To be called before a device is touched.
   *
   * @throws UsageException when nobody has agreed and nobody is there to ask
   */
  void requireSomebody() {
    if (makesSound && !given && !person.present()) {
      throw new UsageException(
          "sound would leave the card and nobody is at a terminal to agree; nothing was played",
          "--yes agrees: first mute the loudspeakers and take in-ears out");
    }
  }

  /** The same once it was given. */
  Consent agreed() {
    return new Consent(person, makesSound, true, told);
  }

  /**
   * To be called before a device is opened. Where that takes it from other programs, it asks before
   * and not after: then what it gives doesn't ask again.
   *
   * @param announcement what will be played there, as it would be said once it is open
   * @throws UsageException when the terminal closes instead
   */
  Consent opening(
      AudioBackend backend, SessionRequest request, Function<SessionInfo, String> announcement)
      throws IOException {
    Optional<String> alone = backend.takenAlone(request);
    if (alone.isEmpty()) {
      return this;
    }
    ask(announcement.apply(expected(backend, request, alone.get())));
    return new Consent(person, makesSound, true, true);
  }

  /** What may be said of a device before it is open: the rest is only there to tell the time. */
  private static SessionInfo expected(AudioBackend backend, SessionRequest request, String device) {
    SampleRate rate = request.rate().orElse(USUAL_RATE);
    return new SessionInfo(backend.name(), device, device, rate, USUAL_BUFFER, true).takenAlone();
  }

  /** Says what will be played, where it sounds at all. */
  void announce(String announcement) {
    if (makesSound && !told) {
      person.say(announcement);
      person.say("Mute the loudspeakers, take in-ears out.");
    }
  }

  /**
   * Says what will be played and waits for Enter, where that is needed.
   *
   * @param announcement where and how loud, one or more sentences
   * @throws UsageException when the terminal closes instead
   */
  void ask(String announcement) throws IOException {
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
    if (!person.agrees(task)) {
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
      say("How many samples are reported for it now? 0 if none, Enter if you can't see.");
      String answer =
          person
              .answer()
              .map(String::strip)
              .orElseThrow(
                  () ->
                      new UsageException(
                          "the terminal closed before it was said what is reported",
                          "--reported-samples says it beforehand"));
      if (answer.isEmpty()) {
        return Optional.empty();
      }
      if (answer.matches("[0-9]{1,7}([.][0-9]{1,6})?")) {
        return Optional.of(ReportedDelay.ofSamples(Double.parseDouble(answer)));
      }
    }
  }

  /** Asks whether to set a server's block size back; where nobody is to be asked, says how. */
  boolean wantsBack(int blockSize) throws IOException {
    if (given || !person.takesQuestions()) {
      say("Set it back in the server's settings, or run this without --yes at a terminal.");
      return false;
    }
    say("y sets it back to %d, Enter leaves it.".formatted(blockSize));
    return person.answer().filter(answer -> answer.strip().equalsIgnoreCase("y")).isPresent();
  }

  /** Asks whether to measure again at another block size; nobody there says no. */
  boolean wantsAnother(int blockSize) throws IOException {
    if (given || !person.takesQuestions()) {
      return false;
    }
    say(
        "More than one cause fits. A second measurement at a block of %d tells them apart: y sets it and measures again, Enter leaves it."
            .formatted(blockSize));
    return person.answer().filter(answer -> answer.strip().equalsIgnoreCase("y")).isPresent();
  }

  /** Says something that matters only while sound is played. */
  void tell(String sentence) {
    if (makesSound) {
      person.say(sentence);
    }
  }

  /** Says what a measurement takes for granted. */
  void note(List<String> notes) {
    notes.forEach(note -> say("Note: " + note + "."));
  }

  /** Says something between questions. */
  void say(String sentence) {
    person.say(sentence);
  }
}
