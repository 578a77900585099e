package dev.loopgauge.campaign;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.junit.jupiter.api.Assumptions;

/**
 * A campaign of many seeded trials. In full ({@code -Dloopgauge.full=true}) its seeds are drawn
 * from the last commit that touched {@code estimate}, {@code stats} or {@code signal}, so that no
 * rule can have been tuned on them, and it goes on where it was stopped: each slice is a line of a
 * log that campaign and commit name. In small, as in each build, the seeds are always the same, so
 * that what passed once passes again.
 *
 * <p>The logs are in {@code src/campaigns}, where they are committed, so that a run goes on
 * anywhere, or the folder that {@code loopgauge.campaigns} names; {@code loopgauge.minutes} ends a
 * run in time, with tables of what there is. A checkout with changes that no commit has begins its
 * logs anew, as does one without git, whose seeds are always the same.
 */
public final class Campaign {
  private static final boolean FULL = Boolean.getBoolean("loopgauge.full");
  private static final String FOLDER = "loopgauge.campaigns";
  private static final long MOST_NANOS =
      Integer.getInteger("loopgauge.minutes", 0) * 60_000_000_000L;
  private static final long BEGUN = System.nanoTime();

  private final long base;
  private final Optional<SliceLog> log;
  private final String label;
  private final Map<String, List<String>> run = new HashMap<>();
  private int waiting;

  private Campaign(long base, Optional<SliceLog> log, String label) {
    this.base = base;
    this.log = log;
    this.label = label;
  }

  /**
   * A campaign in full or in small, as this run asks.
   *
   * @param name names its log: lower case and hyphens
   * @param rooms the packages that it tries besides those, below {@code dev.loopgauge}, as folders
   */
  public static Campaign named(String name, String... rooms) {
    if (!FULL) {
      return new Campaign(0, Optional.empty(), "the same in each build");
    }
    String folder = System.getProperty(FOLDER, Path.of("src", "campaigns").toString());
    return inFull(name, Revision.of(Path.of(""), rooms), Path.of(folder));
  }

  /** A campaign in full, at a revision. */
  static Campaign inFull(String name, Revision revision, Path folder) {
    Path file = folder.resolve(name + "-" + revision.label() + ".tsv");
    SliceLog log = new SliceLog(file, !revision.isCertain());
    return new Campaign(revision.seed(), Optional.of(log), "drawn from " + revision.label());
  }

  /** One number or the other, as this run is in full or in small. */
  public static int fullOrSmall(int full, int small) {
    return FULL ? full : small;
  }

  /**
   * The first slice to run: in full another one than 0 if {@code loopgauge.first} says so, so that
   * two processes may share the slices.
   */
  public static int first(int small) {
    return fullOrSmall(Integer.getInteger("loopgauge.first", 0), small);
  }

  /** Where the seeds are from, for the head of a table. */
  public String label() {
    return label;
  }

  /** The seed of a trial, by a number that it alone has in the campaign. */
  public long seed(long trial) {
    return base + trial;
  }

  /**
   * What a slice came to: where this run or an earlier one got so far, that, else it is run. Empty
   * where this run's time is up.
   *
   * @param name its own within the campaign
   * @param run gives its figures, at least one, without tabs and line ends
   */
  public Optional<List<String>> slice(String name, Supplier<List<String>> run) {
    List<String> earlier =
        this.run.getOrDefault(name, log.map(kept -> kept.of(name)).orElse(List.of()));
    if (!earlier.isEmpty()) {
      return Optional.of(earlier);
    }
    if (MOST_NANOS > 0 && System.nanoTime() - BEGUN > MOST_NANOS) {
      waiting++;
      return Optional.empty();
    }
    List<String> figures = List.copyOf(run.get());
    this.run.put(name, figures);
    log.ifPresent(kept -> kept.keep(name, figures));
    return Optional.of(figures);
  }

  /** Ends a test, neither passed nor failed, where slices wait for another run. */
  public void assumeWhole() {
    Assumptions.assumeTrue(waiting == 0, () -> waiting + " slices wait for another run");
  }
}
