package dev.loopgauge.screen.desk;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.JournalName;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.job.live.BuiltInRig;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Discreet;
import dev.loopgauge.report.measured.ScreenDocument;
import dev.loopgauge.screen.state.Taken;
import dev.loopgauge.screen.state.Trouble;
import dev.loopgauge.screen.state.WatchSeen;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.SetupException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Takes what the browsers ask for, has it done, and puts up what came of it. What it is asked to do
 * it begins and returns at once; any thread may ask.
 */
public final class Desk implements AutoCloseable {
  private static final long CLOSING_MS = 5_000;

  private final ScreenRequest request;
  private final String backend;
  private final RigFile file;
  private final Kept kept;
  private final Discreet discreet;
  private final Knowledge known;
  private final Jobs jobs;
  private final Sounding sounding;
  private final SoundWatch sound;

  /**
   * A desk; it watches the chain file and the sound until it is closed.
   *
   * @throws ChainFormatException when the chain file is none
   * @throws SetupException when the profile can't be read
   * @throws UsageException when the chain file can't be read, or there is no such back end
   */
  public Desk(ScreenRequest request, Site site) throws ChainFormatException, SetupException {
    this.request = request;
    backend = request.live().backend(DataFolder.of(site.environment()));
    file = new RigFile(request.chain());
    String journal = JournalName.of(request.journal(), site.environment());
    discreet = new Discreet(List.of(request.chain().toString(), journal));
    known = new Knowledge(file, isBuiltIn(), request.show());
    kept = new Kept(new ShowBook(request.journal(), site.environment()), known, discreet);
    AudioSystem audio = isBuiltIn() ? site.audio().tappedBy(new InRealTime()) : site.audio();
    jobs = new Jobs(known, discreet, new Site(audio, site.person(), site.environment()));
    sounding =
        new Sounding(request, site.environment(), backend, file, known, kept, discreet, jobs);
    sound = new SoundWatch(site.audio(), backend);
    kept.recall();
    sound.everySecond(this::look);
  }

  /** A text without the names of folders. */
  public String told(String text) {
    return discreet.told(text);
  }

  /** What the browsers read. */
  public Board board() {
    return known.board();
  }

  /**
   * Measures all paths.
   *
   * @throws UsageException when something else is under way
   */
  public void measureAll() {
    sounding.measureAll();
  }

  /**
   * Measures a path.
   *
   * @param arrival which arrival is its, {@code first} or {@code strongest}; empty where that shall
   *     stay open
   * @throws UsageException when something else is under way, or there is no such arrival
   */
  public void measure(String path, Optional<String> arrival) {
    sounding.measure(path, arrival);
  }

  /**
   * Measures a path, and once more at the block size that tells its possible causes apart.
   *
   * @throws UsageException when something else is under way
   */
  public void tellApart(String path) {
    sounding.tellApart(path);
  }

  /**
   * Checks the patch; where the chain file has no patch sheet, that of one path.
   *
   * @throws UsageException when something else is under way
   */
  public void check(String path) {
    sounding.check(path);
  }

  /**
   * Watches all paths, which plays nothing, until it is stopped.
   *
   * @throws UsageException when something else is under way
   */
  public void watch() {
    sounding.watch();
  }

  /** Whoever sits at the computer agrees to what they were asked, or doesn't. */
  public void agree(boolean yes) {
    jobs.agree(yes);
  }

  /** Ends what runs; what plays, at once. What is being kept is kept. */
  public void stop() {
    jobs.stop();
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
    jobs.work(
        "Keeping", () -> known.show(show), () -> kept.keep(waiting, request.chain(), when, show));
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

  /**
   * While a job runs, that tells by itself when the sound is gone; a watch goes on without it, to
   * hear it come back.
   */
  private void look() {
    boolean changed = file.refresh();
    if (changed) {
      known.watching(WatchSeen::ofOtherFile);
    }
    boolean heard = jobs.isBusy() && !known.isWatchOverdue();
    Optional<Trouble> now = heard ? known.silent() : sound.look();
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
    sound.close();
    stop();
    try {
      jobs.awaitIdle(CLOSING_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    known.board().close();
  }
}
