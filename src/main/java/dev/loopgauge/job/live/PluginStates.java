package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.GraphSession;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.measure.Playing;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.ReportedDelay;
import dev.loopgauge.verify.StateCheck;
import dev.loopgauge.verify.StateCheck.Reported;
import dev.loopgauge.verify.StateReading;
import dev.loopgauge.verify.verdict.JudgedReading;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Has somebody put a plug-in into one state after another, and measures each. Channels are opened
 * anew for each state, since reloading may close them.
 *
 * @param run what was asked for; somebody must be at the terminal
 * @param target the path through the plug-in
 * @param witness another channel of the same host to watch
 * @param throughProgram whether the path is a program of the audio server, whose graph reports
 */
record PluginStates(
    LiveRun run, LiveTarget target, Optional<ChannelPair> witness, boolean throughProgram) {
  private static final String IN_EACH = " The same in each state.";

  /** One look at the path: its delay, and what the graph reports for it where there is a graph. */
  private record Look(Estimate estimate, Optional<ReportedDelay> stated, List<String> notes) {}

  /**
   * Reads each state.
   *
   * @throws CaptureException when the sound fails
   * @throws UsageException when the terminal closes
   */
  Answer answer(List<String> states) throws CaptureException, SetupException, IOException {
    boolean announced = false;
    List<StateReading> readings = new ArrayList<>();
    List<Estimate> estimates = new ArrayList<>();
    Set<String> notes = new LinkedHashSet<>();
    for (String state : states) {
      String task = "Put the plug-in into this state: " + state + ".";
      Look path = announced ? next(task) : first(task);
      announced = true;
      if (!(path.estimate() instanceof Estimate.Found found)) {
        return refused(state, path.estimate());
      }
      Optional<Measurement> other = Optional.empty();
      if (witness.isPresent()) {
        Estimate watched = look(target.with(besidesReference(witness.get()))).estimate();
        if (!(watched instanceof Estimate.Found seen)) {
          return refused(state + ", on the other channel", watched);
        }
        other = Optional.of(seen.measurement());
      }
      estimates.add(found);
      notes.addAll(path.notes());
      readings.add(
          new StateReading(state, found.measurement(), reported(path, found, state), other));
    }
    return answer(readings, estimates, List.copyOf(notes));
  }

  private Patching besidesReference(ChannelPair pair) {
    return new Patching(pair, target.settings().patching().reference());
  }

  /** Says once what will be played: each state's own Enter then agrees to its sound. */
  private Look first(String task) throws CaptureException, SetupException, IOException {
    Consent consent = target.opening(run.consent(), Playing.MOST_SPARE, IN_EACH);
    try (AudioSession session = target.open()) {
      refuseShifting(session);
      LiveReading reading = target.reading(session, consent.agreed()).playingAgain();
      consent.announce(reading.announcement() + IN_EACH);
      consent.waitFor(task);
      return look(target, session);
    }
  }

  private Look next(String task) throws CaptureException, SetupException, IOException {
    run.consent().waitFor(task);
    return look(target);
  }

  private Look look(LiveTarget what) throws CaptureException, SetupException, IOException {
    try (AudioSession session = what.open()) {
      return look(what, session);
    }
  }

  private Look look(LiveTarget what, AudioSession session)
      throws CaptureException, SetupException, IOException {
    LiveReading reading = what.reading(session, run.consent().agreed()).playingAgain();
    if (throughProgram && session instanceof GraphSession graph) {
      Estimate estimate = reading.throughProgram();
      return new Look(
          estimate, Optional.of(ReportedDelay.ofSamples(graph.stated(0, 0).samples())), List.of());
    }
    Repeatable way = reading.repeatable(what.store());
    return new Look(way.take(), Optional.empty(), way.notes());
  }

  /** Two numbers that hold different delays of the card have no difference that means anything. */
  private void refuseShifting(AudioSession session) {
    if (target.settings().patching().reference().isEmpty() && !session.info().sampleLocked()) {
      throw new UsageException(
          "--states needs a reference: " + session.info().backend() + " is shifted at each opening",
          "patch one: --reference-send and --reference-return");
    }
  }

  private Optional<ReportedDelay> reported(Look path, Estimate.Found found, String state)
      throws IOException {
    Optional<ReportedDelay> said = run.request().reported().at(found.measurement().delay().rate());
    if (said.isPresent() || path.stated().isPresent()) {
      return said.or(path::stated);
    }
    return state.equals(StateCheck.BYPASSED) ? Optional.empty() : run.consent().askReported();
  }

  private static Answer refused(String state, Estimate estimate) {
    List<Finding> findings =
        estimate.findings().stream()
            .map(
                finding ->
                    new Finding(
                        finding.code(),
                        finding.refuses(),
                        "when " + state + ": " + finding.text(),
                        finding.hint()))
            .toList();
    return Answer.measured(
        MeasurementDocument.of(
            "host",
            JudgedReading.ofNoPath(new Estimate.Refused(findings), Optional.empty()),
            List.of()));
  }

  private Answer answer(List<StateReading> readings, List<Estimate> estimates, List<String> notes) {
    List<StateCheck> checks =
        StateCheck.of(readings, throughProgram ? Reported.PATH : Reported.PLUGIN);
    int shown = readings.get(0).state().equals(StateCheck.BYPASSED) && readings.size() > 1 ? 1 : 0;
    JudgedReading reading =
        ChosenPath.judge(run.chosen(), estimates.get(shown), checks.get(shown).host());
    return Answer.measured(
        MeasurementDocument.of("host", reading.withStates(checks), notes).withStates(checks));
  }
}
