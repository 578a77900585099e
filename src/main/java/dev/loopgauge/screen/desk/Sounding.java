package dev.loopgauge.screen.desk;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.StopSign;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.report.form.Discreet;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.screen.state.Situation.Checked;
import dev.loopgauge.screen.state.Taken;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.SetupException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;

/**
 * Begins the jobs that play or listen, and takes what they come to.
 *
 * @param request what the screen is about
 * @param environment names the folder of profiles
 * @param backend the back end's name
 * @param file the chain file
 * @param known learns what came of them
 * @param kept what the journal knows
 * @param discreet goes over what is told
 * @param jobs runs them, one at a time
 */
record Sounding(
    ScreenRequest request,
    Map<String, String> environment,
    String backend,
    RigFile file,
    Knowledge known,
    Kept kept,
    Discreet discreet,
    Jobs jobs) {
  private interface Errand {
    void run(Errands errands, Ears ears) throws Exception;
  }

  /**
   * Measures all paths.
   *
   * @throws UsageException when something else is under way
   */
  void measureAll() {
    play(
        "Measuring all paths",
        ReturnNames.ofRound(chain(), reference()),
        (errands, ears) -> errands.measureAll((name, document) -> took(name, document, ears)));
  }

  /**
   * Measures a path.
   *
   * @param arrival which arrival is measured where there are several
   * @throws UsageException when something else is under way, or there is no such arrival
   */
  void measure(String path, Optional<String> arrival) {
    ArrivalChoice meant = arrival.map(Sounding::arrival).orElse(ArrivalChoice.UNDECIDED);
    play(
        "Measuring " + path,
        names(path),
        (errands, ears) ->
            errands.measure(path, meant, (name, document) -> took(name, document, ears)));
  }

  private static ArrivalChoice arrival(String label) {
    return Arrays.stream(ArrivalChoice.values())
        .filter(choice -> choice.label().equals(label))
        .findFirst()
        .orElseThrow(() -> new UsageException("there is no arrival '" + label + "'", "reload"));
  }

  /**
   * Measures a path again at the block size that tells its possible causes apart.
   *
   * @throws UsageException when something else is under way
   */
  void tellApart(String path) {
    play(
        "Measuring " + path + " at two block sizes",
        names(path),
        (errands, ears) -> errands.tellApart(path, (name, document) -> took(name, document, ears)));
  }

  /**
   * Checks the patch; where the chain file has no patch sheet, that of one path.
   *
   * @throws UsageException when something else is under way
   */
  void check(String path) {
    chain().path(path);
    play(
        "Checking the patch",
        ReturnNames.ofAll(chain(), reference()).unsure(),
        (errands, ears) -> known.checked(new Checked(errands.check(path), Instant.now())));
  }

  private void play(String title, ReturnNames names, Errand errand) {
    jobs.play(title, names, job(errand));
  }

  private Jobs.Job job(Errand errand) {
    return (where, ears) -> {
      errand.run(new Errands(request, backend, chain(), known.rig(), where), ears);
      kept.recall();
    };
  }

  /**
   * Watches all paths, which plays nothing, until it is stopped.
   *
   * @throws UsageException when something else is under way
   */
  void watch() {
    StopSign enough = new StopSign();
    PageWatch page = new PageWatch(known, discreet);
    jobs.listen(
        "Watching",
        ReturnNames.ofAll(chain(), reference()),
        job(
            (errands, ears) -> {
              try {
                page.over(errands.watch(page, enough));
              } finally {
                page.over("The watch failed.");
              }
            }),
        enough::stop);
  }

  private ReturnNames names(String path) {
    return ReturnNames.ofPath(chain().path(path), reference());
  }

  private Optional<Integer> reference() {
    try {
      return request.live().referenceReturn(DataFolder.of(environment), chain());
    } catch (SetupException e) {
      // The job that is about to begin says so.
      return Optional.empty();
    }
  }

  private void took(String path, MeasurementDocument document, Ears ears) {
    Instant at = ears.heard().orElseGet(Instant::now);
    known.took(
        path,
        new Taken(
            Answer.measured(document),
            document,
            at.atZone(ZoneId.systemDefault()),
            file.rig().text(),
            ears.opened(),
            Optional.empty()));
  }

  private Chain chain() {
    return file.rig().chain();
  }
}
