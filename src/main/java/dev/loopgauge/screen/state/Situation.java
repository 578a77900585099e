package dev.loopgauge.screen.state;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.patch.PatchDocument;
import dev.loopgauge.screen.state.ScreenState.Keeping;
import dev.loopgauge.screen.state.ScreenState.Options;
import dev.loopgauge.screen.state.ScreenState.PatchState;
import dev.loopgauge.screen.state.ScreenState.PathState;
import dev.loopgauge.verify.verdict.Judgement;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the screen's state is made of.
 *
 * @param rig the chain file as it is
 * @param watch what is watched, or was last
 * @param readings the last reading of each path
 * @param past what the journal knows of each path
 * @param patch the last check of the patch, and when
 * @param alignments works out what to delay in the mixes
 */
public record Situation(
    Rig rig,
    Optional<Trouble> sound,
    Doing doing,
    WatchSeen watch,
    Map<String, Taken> readings,
    Map<String, PastState> past,
    Optional<Checked> patch,
    Alignments alignments,
    Keeping keeping,
    Options options,
    boolean practice) {
  /**
   * A chain file, read.
   *
   * @param text as it stands
   * @param budget its prediction
   * @param forecasts the same in words, by the names of the paths
   * @param trouble why a later edition of the file could not be read
   */
  public record Rig(
      String text,
      Chain chain,
      BudgetDocument budget,
      Map<String, Forecast> forecasts,
      Optional<Trouble> trouble) {
    /** A file that was read. */
    public static Rig of(String text, Chain chain, BudgetDocument budget) {
      Map<String, Forecast> forecasts = new HashMap<>();
      for (PathRecord path : budget.paths()) {
        forecasts.put(path.name(), Forecast.of(chain, path));
      }
      return new Rig(text, chain, budget, Map.copyOf(forecasts), Optional.empty());
    }

    /** The same while a later edition of the file can't be read. */
    public Rig troubled(Trouble why) {
      return new Rig(text, chain, budget, forecasts, Optional.of(why));
    }
  }

  /** A check of the patch. */
  public record Checked(PatchDocument document, Instant at) {}

  /** Copies the maps. */
  public Situation {
    readings = Map.copyOf(readings);
    past = Map.copyOf(past);
  }

  /** The state. */
  public ScreenState state() {
    List<PathState> paths = rig.budget().paths().stream().map(this::path).toList();
    Map<String, MeasuredDelay> measured = measured(paths);
    return new ScreenState(
        rig.chain().name(),
        settings(),
        practice,
        Sentences.of(paths),
        sound.or(rig::trouble),
        doing,
        watched(),
        paths,
        patch.map(Situation::checked),
        new Mixing(rig.chain().rate(), measured, alignments.of(rig.chain(), measured))
            .of(rig.budget().mixes()),
        keeping,
        options,
        rig.budget().notes());
  }

  private PathState path(PathRecord path) {
    Forecast forecast = rig.forecasts().get(path.name());
    Optional<PastState> known = Optional.ofNullable(past.get(path.name()));
    Optional<Taken> taken = Optional.ofNullable(readings.get(path.name()));
    Optional<String> moved =
        watch
            .movedSince(path.name(), taken.map(one -> one.at().toInstant()).orElse(Instant.EPOCH))
            .map(WatchSeen::brief);
    return taken.isEmpty()
        ? PathWords.unmeasured(path, forecast, known, moved)
        : PathWords.measured(
            path, forecast, taken.get(), outdated(taken.get(), moved), known, moved);
  }

  private Optional<String> outdated(Taken taken, Optional<String> moved) {
    return taken.chainText().equals(rig.text())
        ? moved.map(event -> "since then, while watched: " + event + "; measure again")
        : Optional.of("the chain file has changed since; measure again");
  }

  /** Those that say how things are now. */
  private Map<String, MeasuredDelay> measured(List<PathState> paths) {
    Map<String, MeasuredDelay> measured = new HashMap<>();
    for (PathState path : paths) {
      path.reading()
          .filter(reading -> reading.outdated().isEmpty())
          .flatMap(reading -> MeasuredDelay.of(readings.get(path.name())))
          .ifPresent(delay -> measured.put(path.name(), delay));
    }
    return measured;
  }

  private Optional<WatchState> watched() {
    return watch.isAny()
        ? Optional.of(WatchState.of(watch, rig.budget().paths(), rig.forecasts()))
        : Optional.empty();
  }

  private String settings() {
    BudgetDocument budget = rig.budget();
    return Numbers.brief(rig.chain().rate().hertz() / 1000.0, 3)
        + " kHz"
        + budget.blockSize().map(block -> " · block " + block).orElse("")
        + budget
            .airTemperature()
            .map(air -> " · " + Numbers.brief(air.doubleValue(), 1) + " °C")
            .orElse("");
  }

  private static PatchState checked(Checked checked) {
    List<String> lines = checked.document().text().lines().toList();
    return new PatchState(
        checked.at().toEpochMilli(),
        checked.document().isGood() ? Judgement.GOOD : Judgement.BAD,
        lines.get(0),
        lines.subList(1, lines.size()));
  }
}
