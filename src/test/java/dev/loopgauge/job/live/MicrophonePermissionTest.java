package dev.loopgauge.job.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.job.Person;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class MicrophonePermissionTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int FRAMES = 480;

  private final List<String> said = new ArrayList<>();

  private final Person person =
      new Person() {
        @Override
        public boolean present() {
          return false;
        }

        @Override
        public void say(String sentence) {
          said.add(sentence);
        }

        @Override
        public Optional<String> answer() {
          return Optional.empty();
        }

        @Override
        public boolean hasAnswered() {
          return false;
        }
      };

  private static Signal with(double sample) {
    double[] samples = new double[FRAMES];
    samples[FRAMES / 2] = sample;
    return Signal.of(RATE, samples);
  }

  /** Two takes whose returns have these samples. */
  private void take(String system, String backend, double first, double second) throws Exception {
    ScriptedSession session =
        new ScriptedSession(
            new SessionInfo(backend, "card", "card", RATE, 256, false),
            take -> new Capture(List.of(with(first), with(second)), List.of()));
    ScriptedBackend scripted =
        new ScriptedBackend(
            backend,
            new Availability.Usable(List.of(new AudioDevice("card", 2, 2, List.of(RATE)))),
            session);
    AudioSystem audio =
        MicrophonePermission.watched(
            new AudioSystem(
                () -> List.of(scripted),
                rig -> {
                  throw new AssertionError("no rig was asked for");
                }),
            person,
            system);
    try (AudioSession opened = open(audio, scripted)) {
      for (int i = 0; i < 2; i++) {
        opened.capture(new Take(List.of(with(0.1)), FRAMES, List.of()));
      }
    }
  }

  private static AudioSession open(AudioSystem audio, ScriptedBackend scripted)
      throws CaptureException {
    return audio.open(
        scripted,
        Optional.empty(),
        new SessionRequest(
            Optional.empty(), Optional.empty(), List.of(1), List.of(1, 2), Optional.of(RATE), 0));
  }

  @Test
  void macOsThatGivesNothingIsToldOnce() throws Exception {
    take("Mac OS X", "java-sound", 0, 0);
    assertEquals(1, said.size());
    assertTrue(said.get(0).contains("Privacy & Security, Microphone"), said.get(0));
  }

  @Test
  void oneReturnThatHearsAnythingIsEnough() throws Exception {
    take("Mac OS X", "java-sound", 0, 1e-6);
    assertEquals(List.of(), said);
  }

  @Test
  void otherSystemsAskForNoPermission() throws Exception {
    take("Linux", "java-sound", 0, 0);
    assertEquals(List.of(), said);
  }

  @Test
  void theBuiltInRigNeedsNone() throws Exception {
    take("Mac OS X", BuiltInRig.NAME, 0, 0);
    assertEquals(List.of(), said);
  }
}
