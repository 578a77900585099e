package dev.loopgauge.screen.desk;

import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.report.form.Discreet;
import dev.loopgauge.screen.state.Doing;
import dev.loopgauge.signal.Hinted;
import java.util.Optional;

/** Runs the jobs of the desk, one at a time, and tells of each how it goes. */
final class Jobs {
  private static final String AGAIN = "measure again when you are ready";

  /** What is to be done. */
  interface Job {
    /**
     * Does it.
     *
     * @param site where, with the page as its person and its sessions heard
     * @param ears what hears them
     */
    void run(Site site, Ears ears) throws Exception;
  }

  /** A job under way: who is asked, and how it is ended. */
  private record Running(PagePerson person, Runnable end) {}

  private final Knowledge known;
  private final Discreet discreet;
  private final Site site;
  private final JobThread thread = new JobThread();
  private volatile Optional<Running> running = Optional.empty();

  /**
   * Nothing runs yet.
   *
   * @param known learns how it goes
   * @param discreet goes over what is told
   * @param site where jobs run
   */
  Jobs(Knowledge known, Discreet discreet, Site site) {
    this.known = known;
    this.discreet = discreet;
    this.site = site;
  }

  /**
   * Begins a job that plays; whoever stops it ends its sound at once.
   *
   * @param title what it is, in words
   * @param returns what the returns are called
   * @throws UsageException when another one runs
   */
  void play(String title, ReturnNames returns, Job job) {
    Ears ears = ears(returns);
    begin(
        Doing.begun(title),
        job,
        ears,
        () -> {
          ears.stop();
          thread.interrupt();
        });
  }

  /**
   * Begins a job that only listens.
   *
   * @param end ends it in order, from any thread
   * @throws UsageException when another one runs
   */
  void listen(String title, ReturnNames returns, Job job, Runnable end) {
    begin(Doing.listening(title), job, ears(returns), end);
  }

  private Ears ears(ReturnNames returns) {
    return new Ears(returns, levels -> known.doing(now -> now.hearing(levels)));
  }

  private void begin(Doing first, Job job, Ears ears, Runnable end) {
    PagePerson person =
        new PagePerson(
            line -> known.doing(now -> now.telling(discreet.told(line))),
            about -> known.doing(now -> now.asking(about.stream().map(discreet::told).toList())));
    Site tapped = new Site(site.audio().tappedBy(ears), person, site.environment());
    thread.begin(
        first.title(),
        () -> {
          running = Optional.of(new Running(person, end));
          known.doing(now -> first);
        },
        () -> run(job, tapped, ears, person));
  }

  private Runnable run(Job job, Site tapped, Ears ears, PagePerson person) {
    try {
      job.run(tapped, ears);
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
        ? now.failing(discreet.told(hinted.getMessage()), discreet.told(hinted.hint()))
        : now.failing(
            "something went wrong that should not",
            "`loopgauge measure` with --debug shows what and where; please report it");
  }

  /**
   * Begins work that makes no sound and can't be stopped.
   *
   * @param first what must be so before it runs, done at once
   * @throws UsageException when another job runs
   */
  void work(String title, Runnable first, JobThread.Work work) {
    thread.begin(
        title,
        () -> {
          running = Optional.empty();
          first.run();
        },
        work);
  }

  /** Whoever sits at the computer agrees to what they were asked, or doesn't. */
  void agree(boolean yes) {
    if (yes) {
      known.doing(Doing::agreed);
    }
    running.ifPresent(job -> job.person().answered(yes));
  }

  /** Ends what runs; what plays, at once. */
  void stop() {
    running.ifPresent(job -> job.end().run());
  }

  /** Whether a job runs. */
  boolean isBusy() {
    return thread.isBusy();
  }

  /** Waits until no job runs, at most this many ms. */
  void awaitIdle(long ms) throws InterruptedException {
    thread.awaitIdle(ms);
  }
}
