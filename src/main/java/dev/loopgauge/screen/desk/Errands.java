package dev.loopgauge.screen.desk;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.HostReport;
import dev.loopgauge.job.SoFar;
import dev.loopgauge.job.StopSign;
import dev.loopgauge.job.WatchListener;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.job.live.BuiltInRig;
import dev.loopgauge.job.live.LiveRequest;
import dev.loopgauge.job.live.MeasureJob;
import dev.loopgauge.job.live.PatchJob;
import dev.loopgauge.job.live.RigChoice;
import dev.loopgauge.job.live.RoundJob;
import dev.loopgauge.job.live.RoundRequest;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.job.live.WatchJob;
import dev.loopgauge.job.live.WatchRequest;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.RoundDocument;
import dev.loopgauge.report.measured.RoundPathRecord;
import dev.loopgauge.report.patch.PatchDocument;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/**
 * The jobs that the screen has done, by their own records.
 *
 * @param request what the screen is about
 * @param backend the back end's name
 * @param chain the chain file as it is
 * @param rig what is wrong with the built-in rig
 * @param site where they run
 */
record Errands(ScreenRequest request, String backend, Chain chain, RigChoice rig, Site site) {
  /** The extra difference that `measure` and `round` allow where nothing else is said. */
  private static final double ALLOW_SAMPLES = 1;

  /**
   * Measures one path.
   *
   * @param arrival which arrival is measured where there are several
   * @param done gets its name and its reading
   */
  void measure(String path, ArrivalChoice arrival, BiConsumer<String, MeasurementDocument> done)
      throws Exception {
    measure(path, arrival, false, done);
  }

  /**
   * Measures one path, and once more with the host at the block size that tells its possible causes
   * apart.
   *
   * @param done gets its name and its reading
   */
  void tellApart(String path, BiConsumer<String, MeasurementDocument> done) throws Exception {
    site.person()
        .say(
            "It is measured twice: the second time with the host at another block size, which is"
                + " set back afterwards. On a JACK server all else that runs is interrupted"
                + " meanwhile.");
    measure(path, ArrivalChoice.UNDECIDED, true, done);
  }

  /** Told as soon as it is read, and again where a second measurement made more of it. */
  private void measure(
      String path,
      ArrivalChoice arrival,
      boolean tellApart,
      BiConsumer<String, MeasurementDocument> done)
      throws Exception {
    LiveRequest live =
        new LiveRequest(
            request.live(),
            budget(Optional.of(path)),
            HostReport.NONE,
            rig,
            arrival,
            KeepChoice.NONE,
            false);
    BiConsumer<String, MeasurementDocument> once = once(done);
    Consumer<Answer> tell = now -> once.accept(path, (MeasurementDocument) now.document());
    tell.accept(
        new MeasureJob(live, false, tellApart).run(site, new SoFar(now -> tell.accept(now.get()))));
  }

  /**
   * Watches all paths that have a patch until somebody has enough.
   *
   * @param enough ends it in order, from any thread
   * @return what it came to, in lines
   */
  String watch(WatchListener listener, StopSign enough) throws Exception {
    WatchRequest watch =
        new WatchRequest(
            request.chain(),
            request.live().profile(),
            request.live().device(),
            WatchRequest.USUAL_WINDOW_SECONDS,
            WatchRequest.USUAL_STEP_SECONDS,
            Optional.empty(),
            rig,
            KeepChoice.NONE);
    return new WatchJob(watch).run(site, listener, enough).document().text();
  }

  /**
   * Measures all paths: those with a patch in one round. The built-in rig plugs in the others by
   * itself, one at a time.
   *
   * @param done gets each path with its reading, as soon as it is there
   */
  void measureAll(BiConsumer<String, MeasurementDocument> done) throws Exception {
    boolean simulated = backend.equals(BuiltInRig.NAME);
    if (isPatched() || !simulated) {
      BiConsumer<String, MeasurementDocument> once = once(done);
      SoFar soFar = new SoFar(now -> tell((RoundDocument) now.get().document(), once));
      tell((RoundDocument) new RoundJob(round()).run(site, soFar).document(), once);
    }
    if (simulated) {
      for (String path : chain.paths().keySet()) {
        if (chain.path(path).patch().isEmpty()) {
          measure(path, ArrivalChoice.UNDECIDED, done);
        }
      }
    }
  }

  private RoundRequest round() {
    return new RoundRequest(
        request.chain(),
        request.live(),
        ALLOW_SAMPLES,
        rig,
        ArrivalChoice.UNDECIDED,
        KeepChoice.NONE,
        false,
        false);
  }

  /** A job tells all that it has each time: each reading of it counts once. */
  private static BiConsumer<String, MeasurementDocument> once(
      BiConsumer<String, MeasurementDocument> done) {
    Map<String, MeasurementDocument> told = new HashMap<>();
    return (path, document) -> {
      if (!document.equals(told.put(path, document))) {
        done.accept(path, document);
      }
    };
  }

  private static void tell(RoundDocument round, BiConsumer<String, MeasurementDocument> done) {
    for (RoundPathRecord path : round.paths()) {
      done.accept(path.path(), path.document());
    }
  }

  /** Checks the whole patch sheet; where the chain file has none, what one path is plugged into. */
  PatchDocument check(String path) throws Exception {
    BudgetChoice budget = budget(isPatched() ? Optional.empty() : Optional.of(path));
    Answer answer = new PatchJob(request.live(), budget, rig, false).run(site);
    return (PatchDocument) answer.document();
  }

  private boolean isPatched() {
    return chain.paths().values().stream().anyMatch(path -> path.patch().isPresent());
  }

  private BudgetChoice budget(Optional<String> path) {
    return new BudgetChoice(Optional.of(request.chain()), path, ALLOW_SAMPLES);
  }
}
