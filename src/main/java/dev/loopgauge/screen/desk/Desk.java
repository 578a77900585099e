package dev.loopgauge.screen.desk;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.JournalName;
import dev.loopgauge.job.live.BuiltInRig;
import dev.loopgauge.job.live.RigChoice;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.ScreenDocument;
import dev.loopgauge.report.measured.ScreenDocument.ShownPathRecord;
import dev.loopgauge.screen.state.Doing;
import dev.loopgauge.screen.state.PastState;
import dev.loopgauge.screen.state.ScreenState;
import dev.loopgauge.screen.state.ScreenState.Fault;
import dev.loopgauge.screen.state.ScreenState.Keeping;
import dev.loopgauge.screen.state.ScreenState.Options;
import dev.loopgauge.screen.state.ScreenState.Trouble;
import dev.loopgauge.screen.state.Situation;
import dev.loopgauge.screen.state.Situation.Checked;
import dev.loopgauge.screen.state.Situation.Rig;
import dev.loopgauge.screen.state.Taken;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.signal.Hinted;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;

/**
 * Takes what the browsers ask for, has it done, and puts up what came of it. All its methods return
 * at once and may be called by any thread.
 */
public final class Desk implements AutoCloseable {
  /** Rates in common use, in Hz (AES5-2018). */
  private static final List<Integer> RATES = List.of(44_100, 48_000, 88_200, 96_000);

  private static final long CLOSING_MS = 5_000;

  private final ScreenRequest request;
  private final Site site;
  private final String backend;
  private final RigFile file;
  private final ShowBook book;
  private final Discreet discreet;
  private final Board board = new Board();
  private final JobThread thread = new JobThread();
  private final SoundWatch watch = new SoundWatch();
  private final Supplier<Optional<Trouble>> sound;

  private final Map<String, Taken> readings = new LinkedHashMap<>();
  private Map<String, PastState> past = Map.of();
  private Doing doing = Doing.NOTHING;
  private Optional<Trouble> silent = Optional.empty();
  private Optional<Checked> patch = Optional.empty();
  private Optional<String> show;
  private String kept = "";
  private boolean notKept;
  private String fault = Faults.NONE;
  private Optional<PagePerson> person = Optional.empty();
  private Optional<Ears> ears = Optional.empty();

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
    book = new ShowBook(request.journal(), site.environment());
    show = request.show();
    discreet =
        new Discreet(
            List.of(
                request.chain(),
                Path.of(JournalName.of(request.journal(), site.environment()))));
    sound = SoundWatch.of(site.audio(), backend);
    recall();
    put();
    watch.everySecond(this::look);
  }

  /** A text without the names of folders. */
  public String told(String text) {
    return discreet.told(text);
  }

  /** What the browsers read. */
  public Board board() {
    return board;
  }

  /** Measures a path, or all of them. */
  public void measure(Optional<String> path) {
    path.ifPresent(name -> file.rig().chain().path(name));
    begin(
        path.map(name -> "Measuring " + name).orElse("Measuring all paths"),
        errands -> {
          if (path.isPresent()) {
            errands.measure(path.get(), this::measured);
          } else {
            errands.measureAll(this::measured);
          }
        });
  }

  /** Checks the patch; where the chain file has no patch sheet, that of one path. */
  public void check(String path) {
    file.rig().chain().path(path);
    begin(
        "Checking the patch",
        errands -> {
          Checked found = new Checked(errands.check(path), Instant.now());
          change(() -> patch = Optional.of(found));
        });
  }

  private interface Errand {
    void run(Errands errands) throws Exception;
  }

  private void begin(String title, Errand errand) {
    Ears listening = new Ears(levels -> doing(now -> now.hearing(levels)));
    PagePerson asked =
        new PagePerson(
            line -> doing(now -> now.telling(discreet.told(line))),
            about -> doing(now -> now.asking(about.stream().map(discreet::told).toList())));
    RigChoice rig = new RigChoice(fault.isEmpty() ? List.of() : List.of(fault), 1);
    Site tapped = new Site(site.audio().tappedBy(listening), asked, site.environment());
    Errands errands = new Errands(request, backend, file.rig().chain(), rig, tapped);
    thread.begin(
        () ->
            change(
                () -> {
                  doing = Doing.begun(title);
                  person = Optional.of(asked);
                  ears = Optional.of(listening);
                }),
        () -> run(errand, errands, listening));
  }

  private void run(Errand errand, Errands errands, Ears listening) {
    try {
      errand.run(errands);
      recall();
      doing(Doing::over);
    } catch (Exception | Error e) {
      boolean stopped = listening.isStopped();
      doing(now -> stopped ? now.failing("Stopped.", "What was measured before stays.") : failing(now, e));
    }
  }

  private Doing failing(Doing now, Throwable thrown) {
    return thrown instanceof Hinted hinted
        ? now.failing(discreet.told(hinted.getMessage()), discreet.told(hinted.hint()))
        : now.failing(
            "something went wrong that should not",
            "`loopgauge measure` with --debug shows what and where; please report it");
  }

  private synchronized void measured(String path, MeasurementDocument document) {
    Taken before = readings.get(path);
    if (before != null && before.document().equals(document)) {
      return;
    }
    Instant at = ears.flatMap(Ears::heard).orElseGet(Instant::now);
    readings.put(
        path,
        new Taken(
            Answer.measured(document),
            document,
            at.atZone(ZoneId.systemDefault()),
            file.rig().text(),
            ears.flatMap(Ears::opened),
            Optional.empty()));
    put();
  }

  /** Whoever sits at the computer agrees to what they were asked, or doesn't. */
  public synchronized void agree(boolean yes) {
    if (yes) {
      doing = doing.agreed();
      put();
    }
    person.ifPresent(one -> one.answered(yes));
  }

  /** Ends what is under way, at once. */
  public void stop() {
    synchronized (this) {
      if (ears.isEmpty() || !thread.isBusy()) {
        return;
      }
      ears.get().stop();
    }
    thread.interrupt();
  }

  /**
   * Keeps all readings that say how things are now and aren't kept yet.
   *
   * @throws UsageException when the show has no name, or there is nothing to keep
   */
  public void keep(When when, Optional<String> named) {
    String name =
        named
            .filter(given -> !given.isBlank())
            .or(() -> show)
            .orElseThrow(
                () -> new UsageException("which show is it?", "give it a name, then keep"));
    Map<String, Taken> waiting = waiting();
    if (waiting.isEmpty()) {
      throw new UsageException("there is no reading that isn't kept yet", "measure first");
    }
    thread.begin(
        () ->
            change(
                () -> {
                  show = Optional.of(name);
                  ears = Optional.empty();
                }),
        () -> keep(waiting, when, name));
  }

  private void keep(Map<String, Taken> waiting, When when, String name) {
    List<String> told = new ArrayList<>();
    PagePerson listener = new PagePerson(line -> told.add(discreet.told(line)), about -> {});
    int done = 0;
    for (Map.Entry<String, Taken> one : waiting.entrySet()) {
      if (book.keep(one.getKey(), one.getValue(), request.chain(), when, name, listener)) {
        change(() -> readings.replace(one.getKey(), one.getValue(), one.getValue().keptAs(when)));
        done++;
      }
    }
    boolean all = done == waiting.size();
    String words =
        all
            ? "Kept %d of %d as %s in \"%s\".".formatted(done, waiting.size(), when.label(), name)
            : String.join(" ", told);
    recall();
    change(
        () -> {
          kept = words;
          notKept = !all;
        });
  }

  private synchronized Map<String, Taken> waiting() {
    Map<String, Taken> waiting = new LinkedHashMap<>(readings);
    String text = file.rig().text();
    waiting.values().removeIf(one -> one.kept().isPresent() || !one.chainText().equals(text));
    return waiting;
  }

  /**
   * Breaks the built-in rig, or mends it.
   *
   * @throws UsageException when it is no such fault, or no built-in rig
   */
  public synchronized void practise(String wanted) {
    if (!isBuiltIn() || Faults.of(chain()).stream().noneMatch(f -> f.fault().equals(wanted))) {
      throw new UsageException(
          "only the simulated rig can be broken, by a fault of the list", "choose one of the list");
    }
    fault = wanted;
    put();
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
    Optional<String> about;
    synchronized (this) {
      about = show;
    }
    return book.report(about);
  }

  /** How the rig stands now, as a document. */
  public synchronized ScreenDocument document() {
    ScreenState state = situation().state();
    return ScreenDocument.of(
        state.sentence().standing(),
        state.sentence().text(),
        state.paths().stream()
            .map(p -> new ShownPathRecord(p.name(), Optional.of(p.standing()), p.word()))
            .toList());
  }

  private void look() {
    boolean changed = file.refresh();
    Optional<Trouble> now = thread.isBusy() ? silent : sound.get();
    if (changed || !now.equals(silent)) {
      change(() -> silent = now);
    }
  }

  /** Reads what the journal knows; what it can't read is no reason to stop. */
  private void recall() {
    Map<String, Taken> now;
    Optional<String> about;
    synchronized (this) {
      now = Map.copyOf(readings);
      about = show;
    }
    try {
      Map<String, PastState> known =
          book.past(List.copyOf(chain().paths().keySet()), now, about);
      change(() -> past = known);
    } catch (JournalException e) {
      change(
          () -> {
            kept = discreet.told(e.getMessage());
            notKept = true;
          });
    }
  }

  private Chain chain() {
    return file.rig().chain();
  }

  private boolean isBuiltIn() {
    return backend.equals(BuiltInRig.NAME);
  }

  private void doing(UnaryOperator<Doing> change) {
    change(() -> doing = change.apply(doing));
  }

  private synchronized void change(Runnable change) {
    change.run();
    put();
  }

  private synchronized void put() {
    board.put(situation().state());
  }

  private synchronized Situation situation() {
    Rig rig = file.rig();
    return new Situation(
        rig, silent, doing, readings, past, patch, keeping(), options(), isBuiltIn());
  }

  private Keeping keeping() {
    boolean reports = past.values().stream().anyMatch(p -> !p.rows().isEmpty());
    return new Keeping(show, kept, notKept, waiting().size(), reports);
  }

  private Options options() {
    Chain chain = chain();
    List<Fault> faults = isBuiltIn() ? Faults.of(chain) : List.of();
    return new Options(
        BlockSizes.USUAL,
        chain.countsBlocks() ? Optional.of(chain.blockSize()) : Optional.empty(),
        RATES,
        chain.rate().hertz(),
        List.copyOf(chain.stages().keySet()),
        faults,
        fault);
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
    board.close();
  }
}
