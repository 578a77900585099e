package dev.loopgauge.chain;

/** A change of one stage, on every path that has to do with it. */
public sealed interface StageChange extends Change {
  /** The stage, by its name in the chain file. */
  String stage();

  /**
   * The stage is not in the path; in a path that passes it more than once, one pass is not.
   *
   * @param stage its name
   */
  record Absent(String stage) implements StageChange {
    @Override
    public String written() {
      return "absent=" + stage;
    }

    @Override
    public String cause() {
      return "stage-absent";
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
      return "'%s' is not in the path (0 samples instead of %s)"
          .formatted(stage, Found.samples(stage, before));
    }

    @Override
    public String check() {
      return "whether it is bypassed, switched off or patched around";
    }
  }

  /**
   * The sound runs through the stage once more.
   *
   * @param stage its name
   */
  record Twice(String stage) implements StageChange {
    @Override
    public String written() {
      return "twice=" + stage;
    }

    @Override
    public String cause() {
      return "stage-twice";
    }

    @Override
    public Chain on(Chain chain) {
      Found.passed(stage, chain);
      return chain.withPaths(path -> path.repeating(stage, stage));
    }

    @Override
    public String told(Chain before) {
      String once = Found.samples(stage, before);
      return "the sound runs through '%s' once too often (%s samples more)".formatted(stage, once);
    }

    @Override
    public String check() {
      return "whether it is inserted or patched in two places";
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
    public String written() {
      String name = more > 0 ? "extra-block=" : "fewer-blocks=";
      return name + stage + (Math.abs(more) == 1 ? "" : ":" + Math.abs(more));
    }

    @Override
    public String cause() {
      return more > 0 ? "extra-block" : "fewer-blocks";
    }

    @Override
    public Chain on(Chain chain) {
      Stage found = Found.in(chain, stage);
      double blocks = blocks(found) + more;
      if (blocks < 0) {
        throw new ChangeFormatException(
            "'%s' has no block to lose: it has %s".formatted(stage, Shown.number(blocks(found))),
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
      return "'%s' takes %s blocks of %d samples, not %s"
          .formatted(stage, Shown.number(old + more), before.blockSize(), Shown.number(old));
    }

    @Override
    public String check() {
      return more > 0
          ? "for one more group, send or safety buffer on the way through the host"
          : "for a group, send or safety buffer no longer on the way through the host";
    }
  }

  /**
   * A delay that is reported, so that others can make up for it, comes on top: it is made up for
   * twice, or not at all where it should be.
   *
   * @param stage the name of a stage whose delay is reported
   */
  record NotCompensated(String stage) implements StageChange {
    @Override
    public String written() {
      return "not-compensated=" + stage;
    }

    @Override
    public String cause() {
      return "reported-not-compensated";
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
      return "the %s samples that %s reports for '%s' come on top, made up for twice or not at all"
          .formatted(Found.samples(stage, before), reporter(before), stage);
    }

    @Override
    public String check() {
      return "that exactly one of host and desk compensates delays";
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
    public String written() {
      return "distance=" + stage + ":" + Shown.rounded(metres);
    }

    @Override
    public String cause() {
      return "distance";
    }

    @Override
    public Chain on(Chain chain) {
      Stage found = Found.in(chain, stage);
      Found.metres(stage, chain);
      return chain.withStage(found.delayedBy(new Delay.Metres(metres), found.tolerance()));
    }

    @Override
    public String told(Chain before) {
      return "'%s' is %s m long, not %s"
          .formatted(stage, Shown.rounded(metres), Shown.rounded(Found.metres(stage, before)));
    }

    @Override
    public String check() {
      return "the distance with a tape measure, and the air temperature";
    }
  }
}
