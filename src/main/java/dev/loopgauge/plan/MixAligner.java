package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Compensation;
import dev.loopgauge.chain.Mix;
import dev.loopgauge.chain.MixEntry;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Aligns one mix. */
final class MixAligner {
  /** Differences below this are the rounding of arithmetic, in samples. */
  private static final double NOTHING = 1e-6;

  /**
   * A path as it arrives.
   *
   * @param entry what the mix says of it
   * @param arrival what is predicted
   * @param delay how late it is
   * @param offset how far behind it is meant to be
   */
  private record Arriving(MixEntry entry, MixArrival arrival, PathDelay delay, Latency offset) {
    /** Where the others must arrive for this one to be right without any delay added. */
    Latency meeting() {
      return delay.delay().minus(offset);
    }

    String path() {
      return entry.path();
    }
  }

  private final Chain chain;
  private final Mix mix;
  private final List<Arriving> arriving = new ArrayList<>();

  MixAligner(Chain chain, Map<String, Latency> loops, Mix mix) {
    this.chain = chain;
    this.mix = mix;
    List<MixArrival> arrivals = MixBudget.arrivals(chain, mix);
    for (int i = 0; i < arrivals.size(); i++) {
      MixEntry entry = mix.entries().get(i);
      arriving.add(
          new Arriving(
              entry,
              arrivals.get(i),
              delay(loops, arrivals.get(i)),
              Latency.ofMs(entry.offsetMs(), chain.rate())));
    }
  }

  /** A measured path holds what the desk adds to it already. */
  private PathDelay delay(Map<String, Latency> loops, MixArrival arrival) {
    String name = arrival.path().name();
    return loops.containsKey(name)
        ? PathDelays.measured(loops).of(chain, chain.path(name))
        : new PathDelay(arrival.delay(), DelaySource.PREDICTED);
  }

  AlignedMix aligned(Optional<String> to, DelayStep step) {
    Arriving latest =
        arriving.stream()
            .max(Comparator.comparingDouble(path -> path.meeting().samples()))
            .orElseThrow();
    Arriving target =
        arriving.stream()
            .filter(path -> to.filter(path.path()::equals).isPresent())
            .findFirst()
            .orElse(latest);
    Latency late = latest.meeting().minus(target.meeting());
    if (late.samples() > NOTHING) {
      throw refusal(target, latest, late);
    }
    return new AlignedMix(
        mix.name(),
        target.path(),
        arriving.stream().map(path -> aligned(path, target.meeting(), step)).toList(),
        unknown());
  }

  private AlignedPath aligned(Arriving path, Latency meeting, DelayStep step) {
    Latency exact = meeting.minus(path.meeting());
    Latency wanted = Math.abs(exact.samples()) < NOTHING ? new Latency(0, chain.rate()) : exact;
    Latency add = step.nearest(wanted, chain);
    return new AlignedPath(
        path.path(),
        path.arrival().path().listener(),
        path.arrival().path().limits(),
        path.delay(),
        path.offset(),
        add,
        add.minus(wanted));
  }

  private LaterThanTargetException refusal(Arriving target, Arriving latest, Latency late) {
    return new LaterThanTargetException(
        String.format(
            Locale.ROOT,
            "in %s, %s arrives %.3f ms (%.1f samples) too late to meet %s, and nothing can advance"
                + " it",
            mix.name(),
            latest.path(),
            late.ms(),
            late.samples(),
            target.path()),
        "leave --to out: then all meet the latest, " + latest.path());
  }

  /** Whether unknown stages matter: they do unless they would move all predicted paths alike. */
  private List<String> unknown() {
    List<Double> moves =
        arriving.stream()
            .map(
                path ->
                    path.delay().source() == DelaySource.MEASURED
                        ? 0.0
                        : path.arrival().delayIfAll().minus(path.arrival().delay()).samples())
            .toList();
    double most = moves.stream().mapToDouble(Double::doubleValue).max().orElse(0);
    double least = moves.stream().mapToDouble(Double::doubleValue).min().orElse(0);
    return most - least <= NOTHING
        ? List.of()
        : arriving.stream()
            .flatMap(path -> chain.path(path.path()).stages().stream())
            .filter(name -> chain.stages().get(name).compensated() == Compensation.UNKNOWN)
            .distinct()
            .toList();
  }
}
