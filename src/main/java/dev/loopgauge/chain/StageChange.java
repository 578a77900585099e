package dev.loopgauge.chain;

import java.util.Locale;

/** A change of one stage, on every path that has to do with it. */
public sealed interface StageChange extends Change {
  /** The stage, by its name in the chain file. */
  String stage();

  @Override
  default String value() {
    return stage();
  }

  /**
   * The stage is not in the path; in a path that passes it more than once, one pass is not.
   *
   * @param stage its name
   */
  record Absent(String stage) implements StageChange {
    @Override
    public ChangeKind kind() {
      return ChangeKind.ABSENT;
    }

    /** Leaves a name in the path, without delay, so that a budget still shows where it was. */
    @Override
    public Chain on(Chain chain) {
      Stage gone = Found.passed(stage, chain).renamed(stage + " (absent)");
      Delay none = new Delay.Samples(0);
      return chain
          .withStage(gone.delayedBy(none, none))
          .withPaths(path -> path.replacing(stage, gone.name()));
    }

    @Override
    public String told(Chain before) {
      return "'"
          + stage
          + "' is not in the path (0 samples instead of "
          + Found.samples(stage, before)
          + ")";
    }
  }

  /**
   * The sound runs through the stage once more.
   *
   * @param stage its name
   */
  record Twice(String stage) implements StageChange {
    @Override
    public ChangeKind kind() {
      return ChangeKind.TWICE;
    }

    @Override
    public Chain on(Chain chain) {
      Found.passed(stage, chain);
      return chain.withPaths(path -> path.repeating(stage, stage));
    }

    @Override
    public String told(Chain before) {
      return "the sound runs through '"
          + stage
          + "' once too often ("
          + Found.samples(stage, before)
          + " samples more)";
    }
  }

  /**
   * The host takes more or fewer blocks than stated.
   *
   * @param stage the name of a stage stated in blocks
   * @param more how many blocks more; fewer where negative
   */
  record HostBlocks(String stage, int more) implements StageChange {
    @Override
    public ChangeKind kind() {
      return more > 0 ? ChangeKind.EXTRA_BLOCK : ChangeKind.FEWER_BLOCKS;
    }

    @Override
    public String value() {
      return stage + (Math.abs(more) == 1 ? "" : ":" + Math.abs(more));
    }

    @Override
    public Chain on(Chain chain) {
      Stage found = Found.in(chain, stage);
      double blocks = blocks(found) + more;
      if (blocks < 0) {
        throw new ChangeFormatException(
            "'" + stage + "' has no block to lose: it has " + Shown.number(blocks(found)),
            "name another stage that is stated in blocks");
      }
      return chain.withStage(found.delayedBy(new Delay.Blocks(blocks), found.tolerance()));
    }

    private static double blocks(Stage found) {
      if (found.delay() instanceof Delay.Blocks counted) {
        return counted.count();
      }
      throw new ChangeFormatException(
          "expected a stage stated in blocks, found '" + found.name() + "'",
          "name one that the chain file states in blocks");
    }

    @Override
    public String told(Chain before) {
      double old = blocks(Found.in(before, stage));
      return String.format(
          Locale.ROOT,
          "'%s' costs %s of %d samples instead of %s",
          stage,
          counted(old + more),
          before.blockSize(),
          Shown.number(old));
    }

    private static String counted(double blocks) {
      return Shown.number(blocks) + (blocks == 1 ? " block" : " blocks");
    }
  }

  /**
   * A delay that is reported, so that others can compensate it, comes on top: it is compensated
   * twice, or not at all where it should be.
   *
   * @param stage the name of a stage whose delay is reported
   */
  record NotCompensated(String stage) implements StageChange {
    @Override
    public ChangeKind kind() {
      return ChangeKind.NOT_COMPENSATED;
    }

    /** Adds the delay to every path: after the stage, or at the end of a path without it. */
    @Override
    public Chain on(Chain chain) {
      Stage again = Found.in(chain, stage).renamed(stage + " (not compensated)");
      reporter(chain);
      return chain
          .withStage(again)
          .withPaths(path -> path.repeating(stage, again.name()).ending(stage, again.name()));
    }

    private String reporter(Chain chain) {
      return Found.in(chain, stage)
          .reportedBy()
          .orElseThrow(
              () ->
                  new ChangeFormatException(
                      "expected a stage with reported-by, found '" + stage + "'",
                      "say in the chain file who reports its delay"));
    }

    @Override
    public String told(Chain before) {
      reporter(before);
      return String.format(
          Locale.ROOT,
          "compensation for '%s' (%s samples) is missing or applied twice",
          stage,
          Found.samples(stage, before));
    }
  }

  /**
   * A way through air is longer or shorter than stated.
   *
   * @param stage the name of a stage stated in metres or feet
   * @param metres its true length
   */
  record Distance(String stage, double metres) implements StageChange {
    /**
     * Checks the length.
     *
     * @throws IllegalArgumentException when out of range
     */
    public Distance {
      new Delay.Metres(metres);
    }

    @Override
    public ChangeKind kind() {
      return ChangeKind.DISTANCE;
    }

    @Override
    public String value() {
      return stage + ":" + Shown.rounded(metres);
    }

    @Override
    public Chain on(Chain chain) {
      Stage found = Found.in(chain, stage);
      Found.metres(stage, chain);
      return chain.withStage(found.delayedBy(new Delay.Metres(metres), found.tolerance()));
    }

    @Override
    public String told(Chain before) {
      return "'"
          + stage
          + "' is "
          + Shown.rounded(metres)
          + " m long, not "
          + Shown.rounded(Found.metres(stage, before));
    }
  }
}
