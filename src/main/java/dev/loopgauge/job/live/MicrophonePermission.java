package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.job.Person;
import dev.loopgauge.signal.Signal;
import java.util.Locale;

/**
 * Names the permission that macOS asks for. A program without it gets digital zero from each input,
 * and no error (from memory; never run there).
 */
public final class MicrophonePermission {
  private static final String TOLD =
      "Every return is digital zero. macOS gives that to a program that may not use the microphone:"
          + " in System Settings, Privacy & Security, Microphone, allow the terminal that runs"
          + " loopgauge, and start the terminal anew.";

  private final Person person;
  private boolean told;

  private MicrophonePermission(Person person) {
    this.person = person;
  }

  /**
   * The same ways to play and record, listened to where the system is macOS.
   *
   * @param system the operating system as Java calls it
   */
  public static AudioSystem watched(AudioSystem audio, Person person, String system) {
    if (!system.toLowerCase(Locale.ROOT).startsWith("mac")) {
      return audio;
    }
    MicrophonePermission permission = new MicrophonePermission(person);
    return audio.tappedBy((session, asked) -> permission.on(session));
  }

  private AudioSession on(AudioSession session) {
    return session.info().backend().equals(BuiltInRig.NAME)
        ? session
        : new SessionTap(this::heard).on(session);
  }

  private void heard(Capture taken) {
    if (!told && taken.returns().stream().allMatch(MicrophonePermission::isZero)) {
      told = true;
      person.say(TOLD);
    }
  }

  private static boolean isZero(Signal heard) {
    return heard.peak() == 0;
  }
}
