package dev.loopgauge.screen.desk;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.JournalName;
import dev.loopgauge.job.live.BuiltInRig;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Discreet;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.ScreenDocument;
import dev.loopgauge.screen.state.Doing;
import dev.loopgauge.screen.state.Situation.Checked;
import dev.loopgauge.screen.state.Taken;
import dev.loopgauge.screen.state.Trouble;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.signal.Hinted;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Takes what the browsers ask for, has it done, and puts up what came of it. What it is asked to do
 * it begins and returns at once; any thread may ask.
 */
public final class Desk implements AutoCloseable {
  private static final long CLOSING_MS = 5_000;
  private static final String AGAIN = "measure again when you are ready";

  /** A job under way: who is asked, and who listens in. */
  private record Running(PagePerson person, Ears ears) {}

  private interface Errand {
    void run(Errands errands, Ears ears) throws Exception;
  }

  private final ScreenRequest request;
  private final Site site;
  private final String backend;
  private final RigFile file;
  private final Kept kept;
  private final Discreet discreet;
  private final Knowledge known;
  private final JobThread thread = new JobThread();
  private final SoundWatch watch = new SoundWatch();
  private final Supplier<Optional<Trouble>> sound;
  private volatile Optional<Running> running = Optional.empty();

  /**
   * A desk; it watches the chain file and the sound until it is closed.
   *
   * @throws ChainFormatException when the chain file is none
   * @throws SetupException when the profile can't be read
   * @throws UsageException when the chain file can't be read, or there is no such back end
   */
  public Desk(ScreenRequest request, Site site) throws ChainFormatException, SetupException {
    this.request = request;
    this.site = site;
    backend = request.live().backend(DataFolder.of(site.environment()));
    file = new RigFile(request.chain());
    String journal = JournalName.of(request.journal(), site.environment());
    discreet = new Discreet(List.of(request.chain().toString(), journal));
    known = new Knowledge(file, isBuiltIn(), request.show());
    kept = new Kept(new ShowBook(request.journal(), site.environment()), known, discreet);
    sound = SoundWatch.of(site.audio(), backend);
    kept.recall();
    watch.everySecond(this::look);
  }

  /** A text without the names of folders. */
  public String told(String text) {
    return discreet.told(text);
  }

  /** What the browsers read. */
  public Board board() {
    return known.board();
  }

  /** Measures a path, or all of them. */
  public void measure(Optional<String> path) {
    path.ifPresent(name -> chain().path(name));
    begin(
        path.map(name -> "Measuring " + name).orElse("Measuring all paths"),
        (errands, ears) -> {
          if (path.isPresent()) {
            errands.measure(path.get(), (name, document) -> took(name, document, ears));
          } else {
            errands.measureAll((name, document) -> took(name, document, ears));
          }
        });
  }

  /** Checks the patch; where the chain file has no patch sheet, that of one path. */
  public void check(String path) {
    chain().path(path);
    begin(
        "Checking the patch",
        (errands, ears) -> known.checked(new Checked(errands.check(path), Instant.now())));
  }

  private void begin(String title, Errand errand) {
    Ears ears = new Ears(levels -> known.doing(now -> now.hearing(levels)));
    PagePerson person =
        new PagePerson(
            line -> known.doing(now -> now.telling(told(line))),
            about -> known.doing(now -> now.asking(about.stream().map(this::told).toList())));
    Site tapped = new Site(site.audio().tappedBy(ears), person, site.environment());
    Errands errands = new Errands(request, backend, chain(), known.rig(), tapped);
    thread.begin(
        () -> {
          running = Optional.of(new Running(person, ears));
          known.doing(now -> Doing.begun(title));
        },
        () -> run(errand, errands, ears, person));
  }

  private Runnable run(Errand errand, Errands errands, Ears ears, PagePerson person) {
    try {
      errand.run(errands, ears);
      kept.recall();
      return () -> known.doing(Doing::over);
    } catch (Exception | Error e) {
      if (ears.isStopped()) {
        return () -> known.doing(now -> now.failing("Stopped.", AGAIN));
      }
      return person.hasLeft()
          ? () -> known.doing(now -> now.failing("Not played.", AGAIN))
          : () -> known.doing(now -> failed(now, e));
    }
  }

  private Doing failed(Doing now, Throwable thrown) {
    return thrown instanceof Hinted hinted
        ? now.failing(told(hinted.getMessage()), told(hinted.hint()))
        : now.failing(
            "something went wrong that should not",
            "`loopgauge measure` with --debug shows what and where; please report it");
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

  /** Whoever sits at the computer agrees to what they were asked, or doesn't. */
  public void agree(boolean yes) {
    if (yes) {
      known.doing(Doing::agreed);
    }
    running.ifPresent(job -> job.person().answered(yes));
  }

  /** Ends what plays, at once. What is being kept is kept. */
  public void stop() {
    running.ifPresent(
        job -> {
          job.ears().stop();
          thread.interrupt();
        });
  }

  /**
   * Keeps all readings that say how things are now and aren't kept yet.
   *
   * @throws UsageException when the show has no name, or there is nothing to keep
   */
  public void keep(When when, Optional<String> named) {
    String show =
        named
            .filter(given -> !given.isBlank())
            .or(known::show)
            .orElseThrow(() -> new UsageException("which show is it?", "give it a name and keep"));
    Map<String, Taken> waiting = known.waiting();
    if (waiting.isEmpty()) {
      throw new UsageException("there is no reading that isn't kept yet", "measure first");
    }
    thread.begin(
        () -> {
          running = Optional.empty();
          known.show(show);
        },
        () -> kept.keep(waiting, request.chain(), when, show));
  }

  /**
   * Breaks the built-in rig, or mends it.
   *
   * @throws UsageException when it is no such fault, or no built-in rig
   */
  public void practise(String fault) {
    if (!isBuiltIn() || Faults.of(chain()).stream().noneMatch(f -> f.fault().equals(fault))) {
      throw new UsageException(
          "only the simulated rig can be broken, by a fault of the list", "choose one of the list");
    }
    known.fault(fault);
  }

  /**
   * What would be predicted.
   *
   * @throws UsageException when that can't be asked
   */
  public WhatIf.Outcome whatIf(WhatIf question) throws ChainFormatException {
    return question.of(request.chain(), file.rig());
  }

  /** The report of the show, as one page. */
  public String report() throws JournalException {
    return kept.report();
  }

  /** How the rig stands now, as a document. */
  public ScreenDocument document() {
    return known.document();
  }

  /** While a job runs, that tells by itself when the sound is gone. */
  private void look() {
    boolean changed = file.refresh();
    Optional<Trouble> now = thread.isBusy() ? known.silent() : sound.get();
    if (changed || !now.equals(known.silent())) {
      known.looked(now);
    }
  }

  private Chain chain() {
    return file.rig().chain();
  }

  private boolean isBuiltIn() {
    return backend.equals(BuiltInRig.NAME);
  }

  @Override
  public void close() {
    watch.close();
    stop();
    try {
      thread.awaitIdle(CLOSING_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    known.board().close();
  }
}
