package dev.loopgauge.plan;

import dev.loopgauge.chain.Compensation;
import dev.loopgauge.chain.Mix;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Aligns one mix: the paths of each input among themselves. */
final class MixAligner {
  /** Differences below this are the rounding of arithmetic, in samples. */
  private static final double NOTHING = 1e-6;

  private final AlignRequest request;
  private final Mix mix;
  private final List<Arriving> arriving = new ArrayList<>();

  MixAligner(AlignRequest request, Mix mix) {
    this.request = request;
    this.mix = mix;
    List<MixArrival> arrivals = MixBudget.arrivals(request.chain(), mix);
    List<Feeding> feedings = Feeding.of(request.chain(), mix);
    for (int i = 0; i < arrivals.size(); i++) {
      Feeding feeding = feedings.get(i);
      arriving.add(
          new Arriving(
              feeding,
              arrivals.get(i),
              Optional.ofNullable(request.loops().get(feeding.path().name()))));
    }
  }

  AlignedMix aligned() {
    Map<String, List<Arriving>> byInput = new LinkedHashMap<>();
    arriving.forEach(
        path ->
            byInput
                .computeIfAbsent(path.feeding().path().input(), input -> new ArrayList<>())
                .add(path));
    Map<String, AlignedPath> aligned = new LinkedHashMap<>();
    byInput.values().stream()
        .flatMap(this::aligned)
        .forEach(path -> aligned.put(path.path(), path));
    return new AlignedMix(
        mix.name(), arriving.stream().map(path -> aligned.get(path.name())).toList(), unknown());
  }

  /** The paths of one input. */
  private Stream<AlignedPath> aligned(List<Arriving> paths) {
    Optional<Arriving> named =
        paths.stream()
            .filter(path -> request.to().filter(path.name()::equals).isPresent())
            .findFirst();
    List<Arriving> movable =
        paths.stream()
            .filter(path -> named.filter(path::equals).isPresent() || mayDelay(path))
            .toList();
    Arriving among = named.or(() -> central(movable)).orElse(paths.get(0));
    List<Arriving> meeting = movable.stream().filter(path -> path.isHeardWith(among)).toList();
    if (meeting.size() < 2) {
      return paths.stream().map(path -> left(path, mayDelay(path)));
    }
    Arriving latest =
        meeting.stream()
            .max(Comparator.comparingDouble(path -> path.behind(among).samples()))
            .orElseThrow();
    Arriving target = named.orElse(latest);
    Latency late = latest.behind(among).minus(target.behind(among));
    if (late.samples() > NOTHING) {
      throw refusal(target, latest, late);
    }
    return paths.stream()
        .map(
            path ->
                meeting.contains(path) ? meeting(path, target, among) : left(path, mayDelay(path)));
  }

  private boolean mayDelay(Arriving path) {
    return request.mayDelay(path.feeding().path().listener());
  }

  /** The path that is heard together with the most others, the first of these. */
  private static Optional<Arriving> central(List<Arriving> paths) {
    return paths.stream()
        .min(Comparator.comparingLong(path -> -paths.stream().filter(path::isHeardWith).count()));
  }

  private AlignedPath meeting(Arriving path, Arriving target, Arriving among) {
    Latency exact = target.behind(among).minus(path.behind(among));
    boolean none = Math.abs(exact.samples()) < NOTHING;
    Latency wanted = none ? new Latency(0, exact.rate()) : exact;
    Latency add = request.step().nearest(wanted, request.chain(), request.longestMs());
    return new AlignedPath(
        path.arrival(),
        path.delay(),
        source(path),
        path.isOutsideBudget(),
        path.offset(),
        add,
        add.minus(wanted),
        Optional.of(target.name()),
        path.placeWith(among),
        AlignedPath.Part.MEETS);
  }

  /** A path that nothing is added to. */
  private AlignedPath left(Arriving path, boolean mayDelay) {
    Latency none = new Latency(0, path.rate());
    return new AlignedPath(
        path.arrival(),
        path.delay(),
        source(path),
        path.isOutsideBudget(),
        path.offset(),
        none,
        none,
        Optional.empty(),
        Optional.empty(),
        mayDelay ? AlignedPath.Part.ALONE : AlignedPath.Part.HELD);
  }

  private static String source(Arriving path) {
    return path.measured().map(MeasuredLoop::source).orElse(DelaySource.PREDICTED.label());
  }

  private LaterThanTargetException refusal(Arriving target, Arriving latest, Latency late) {
    return new LaterThanTargetException(
        String.format(
            Locale.ROOT,
            "in %s, %s arrives %.3f ms (%.1f samples) too late to meet %s, and nothing can advance"
                + " it",
            mix.name(),
            latest.name(),
            late.ms(),
            late.samples(),
            target.name()),
        "leave --to out: then all meet the latest, " + latest.name());
  }

  /** Whether unknown stages matter: they do unless they would move all predicted paths alike. */
  private List<String> unknown() {
    List<Double> moves =
        arriving.stream()
            .map(
                path ->
                    path.measured().isPresent()
                        ? 0.0
                        : path.arrival().delayIfAll().minus(path.arrival().delay()).samples())
            .toList();
    double most = moves.stream().mapToDouble(Double::doubleValue).max().orElse(0);
    double least = moves.stream().mapToDouble(Double::doubleValue).min().orElse(0);
    return most - least <= NOTHING
        ? List.of()
        : arriving.stream()
            .flatMap(path -> path.feeding().path().stages().stream())
            .filter(name -> compensation(name) == Compensation.UNKNOWN)
            .distinct()
            .toList();
  }

  private Compensation compensation(String stage) {
    return request.chain().stages().get(stage).compensated();
  }
}
