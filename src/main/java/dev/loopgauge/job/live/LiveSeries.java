package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.measure.Soak;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.SeriesNote;
import dev.loopgauge.verify.SeriesReading;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** {@code series --live}: measures one loop while its host runs at one block size after another. */
public final class LiveSeries {
  /** A take in which sound was lost gets another chance, and small blocks lose it often. */
  private static final int MOST_TRIES = 6;

  private static final String AT_EACH = " The same at each block size.";

  private final LiveTarget target;
  private final double minutes;
  private final List<SeriesReading> readings = new ArrayList<>();
  private final List<SeriesNote> notes = new ArrayList<>();
  private Consent consent;

  /**
   * A series to be read.
   *
   * @param target what to measure
   * @param minutes for how long to go on at each block size, in minutes of sound; 0 for one take
   * @param consent asked before the first sound
   */
  public LiveSeries(LiveTarget target, double minutes, Consent consent) {
    this.target = target;
    this.minutes = minutes;
    this.consent = consent;
  }

  /**
   * Reads at each block size.
   *
   * @param after what to do after each
   * @throws CaptureException when the sound fails for good; the host is set back even so
   */
  public void read(HostBlocks host, List<Integer> sizes, Runnable after)
      throws CaptureException, SetupException, IOException {
    host.warning().ifPresent(consent::say);
    consent = target.opening(consent, 0, AT_EACH);
    for (int size : sizes) {
      read(size, host.set(size));
      after.run();
    }
  }

  private void read(int size, AudioBackend backend)
      throws CaptureException, SetupException, IOException {
    try (AudioSession session = target.openOn(backend)) {
      LiveReading live = target.reading(session, consent);
      Repeatable way = live.repeatable(target.store());
      if (readings.isEmpty()) {
        consent.note(way.notes());
      }
      consent.ask(live.announcement() + AT_EACH);
      consent = consent.agreed();
      Soak soak = new Soak(live.takeSeconds());
      Optional<CaptureException> end = new Takes(way, soak).until(() -> isEnough(soak), () -> {});
      end.ifPresent(why -> note("broke-off", size, why.getMessage(), why.hint()));
      add(size, soak);
    } catch (CaptureException e) {
      if (!Takes.PASSING.contains(e.kind())) {
        throw e;
      }
      note("no-reading", size, e.getMessage(), e.hint());
    }
  }

  private boolean isEnough(Soak soak) {
    boolean tried = soak.level().isPresent() || soak.takes() >= MOST_TRIES;
    return tried && soak.takes() > 0 && soak.seconds() >= minutes * 60;
  }

  private void add(int size, Soak soak) {
    int lost = soak.count(Soak.Kind.DROPOUT) + soak.count(Soak.Kind.FAILED);
    if (soak.level().isEmpty()) {
      note(
          "no-reading",
          size,
          soak.worst().map(Soak.Moment::text).orElse("nothing was read"),
          "is the path patched and open? measure it by itself first");
      return;
    }
    Measurement level = soak.level().get();
    consent.say(
        "block %d: %s samples%s"
            .formatted(
                size,
                Numbers.plain(level.delay().samples(), 2),
                lost == 0 ? "" : ", sound lost in " + lost + " takes"));
    if (level.delay().samples() < 0) {
      note(
          "no-reading",
          size,
          "the return leads by %s samples, which no host can"
              .formatted(Numbers.plain(-level.delay().samples(), 1)),
          "are path and reference swapped?");
      return;
    }
    if (soak.count(Soak.Kind.STEP) > 0) {
      note(
          "moved",
          size,
          "the delay moved while it was read",
          "is the host still settling, or losing blocks? soak it by itself");
    }
    readings.add(SeriesReading.of(size, level, lost));
    noteCard(level);
  }

  private void noteCard(Measurement level) {
    boolean known = notes.stream().anyMatch(note -> note.code().equals("uncalibrated"));
    if (level.method() == Method.UNCALIBRATED && !known) {
      notes.add(
          new SeriesNote(
              "uncalibrated",
              "the sound card's own delay and blocks are in the readings",
              "patch a reference, and it cancels; between programs of one server there is none"));
    }
  }

  private void note(String code, int size, String text, String hint) {
    notes.add(new SeriesNote(code, "at a block of " + size + ": " + text, hint));
  }

  /** What was read so far. */
  public List<SeriesReading> readings() {
    return List.copyOf(readings);
  }

  /** What to know about it. */
  public List<SeriesNote> notes() {
    return List.copyOf(notes);
  }
}
