package dev.loopgauge.chain;

/** Stages that changes ask for by name, and what they come to. */
public final class Found {
  private Found() {}

  /**
   * The stage of that name.
   *
   * @throws ChangeFormatException when there is none
   */
  public static Stage in(Chain chain, String name) {
    Stage stage = chain.stages().get(name);
    if (stage == null) {
      throw new ChangeFormatException(
          "expected a stage of '" + chain.name() + "', found " + Shown.quoted(name),
          Nearest.hint(name, chain.stages().keySet()));
    }
    return stage;
  }

  /**
   * The stage of that name, which some path passes.
   *
   * @throws ChangeFormatException when there is none
   */
  public static Stage passed(String name, Chain chain) {
    Stage stage = in(chain, name);
    if (chain.paths().values().stream().noneMatch(path -> path.stages().contains(name))) {
      throw new ChangeFormatException(
          "no path runs through '" + name + "'", "name a stage that a path lists");
    }
    return stage;
  }

  /** The stage's delay in samples, as people write it. */
  public static String samples(String name, Chain chain) {
    return Shown.rounded(chain.delay(in(chain, name)).samples());
  }

  /**
   * How long the stage's way through air is.
   *
   * @throws ChangeFormatException when it is not air
   */
  public static double metres(String name, Chain chain) {
    return in(chain, name)
        .delay()
        .airMetres()
        .orElseThrow(
            () ->
                new ChangeFormatException(
                    "expected a stage stated in metres or feet, found '" + name + "'",
                    "name a stage that is air"));
  }
}
