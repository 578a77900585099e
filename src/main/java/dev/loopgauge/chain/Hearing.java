package dev.loopgauge.chain;

import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What listeners hear, and so what their limits are applied to.
 *
 * <p>A performer's limits count from the source. Those of the house count from the first sound that
 * its seat hears: the direct sound, or an earlier path of the same input at that position. Where
 * neither is stated they are applied to the path's delay without air.
 */
public final class Hearing {
  private record Seat(String position, String input) {}

  private record First(String sound, Latency at) {}

  private static final Comparator<First> BY_TIME =
      Comparator.comparingDouble(first -> first.at().samples());

  private final Chain chain;
  private final Map<String, Latency> delays;
  private final Map<Seat, List<First>> heard = new HashMap<>();

  private Hearing(Chain chain, Map<String, Latency> delays) {
    this.chain = chain;
    this.delays = delays;
    for (String name : delays.keySet()) {
      ChainPath path = chain.path(name);
      for (String position : positions(path)) {
        heard
            .computeIfAbsent(new Seat(position, path.input()), seat -> new ArrayList<>())
            .add(new First(name, at(path, position, delays.get(name))));
      }
    }
    heard.values().forEach(sounds -> sounds.sort(BY_TIME));
  }

  /** With every path as its chain predicts it. */
  public static Hearing predicted(Chain chain) {
    return predicted(chain, path -> true);
  }

  /** The same, with what counts for one path alone. */
  static Hearing around(Chain chain, ChainPath path) {
    List<String> seats = positions(path);
    if (seats.isEmpty()) {
      return of(chain, Map.of(path.name(), sum(chain, path, stage -> true)));
    }
    return predicted(
        chain,
        other ->
            other.equals(path)
                || (other.input().equals(path.input())
                    && positions(other).stream().anyMatch(seats::contains)));
  }

  private static Hearing predicted(Chain chain, Predicate<ChainPath> counts) {
    Map<String, Latency> delays = new LinkedHashMap<>();
    chain.paths().values().stream()
        .filter(counts)
        .forEach(path -> delays.put(path.name(), sum(chain, path, stage -> true)));
    return new Hearing(chain, delays);
  }

  /**
   * With paths that are so late, from their source through all their stages.
   *
   * @param delays the delays by the names of the paths, at the chain's rate
   * @throws UnknownPathException when a path is not of the chain
   */
  public static Hearing of(Chain chain, Map<String, Latency> delays) {
    return new Hearing(chain, Map.copyOf(delays));
  }

  private static List<String> positions(ChainPath path) {
    return path.loudspeaker().map(Loudspeaker::positions).orElse(List.of());
  }

  private static Latency sum(Chain chain, ChainPath path, Predicate<Stage> counts) {
    double samples =
        path.stages().stream()
            .map(chain.stages()::get)
            .filter(counts)
            .mapToDouble(stage -> chain.delay(stage).samples())
            .sum();
    return new Latency(samples, chain.rate());
  }

  /** How late a path is at each position that hears it. */
  public List<SeatArrival> seats(ChainPath path) {
    return seats(path, delays.get(path.name()));
  }

  private List<SeatArrival> seats(ChainPath path, Latency own) {
    return positions(path).stream().map(position -> seat(path, position, own)).toList();
  }

  private SeatArrival seat(ChainPath path, String position, Latency own) {
    First itself = new First(path.name(), at(path, position, own));
    First first = first(path, position, itself);
    Latency after = itself.at().minus(first.at());
    Judged judged = judged(path, position, first, itself, own);
    Standing standing = chain.limits().get(path.listener()).standing(judged.ms());
    return new SeatArrival(position, itself.at(), after, first.sound(), judged, standing);
  }

  private Judged judged(ChainPath path, String position, First first, First itself, Latency own) {
    double after = itself.at().minus(first.at()).ms();
    if (path.listener() != Listener.HOUSE) {
      return Judged.fromSource(itself.at().ms(), Optional.of(position));
    }
    if (first.sound().equals(SeatArrival.DIRECT_SOUND)) {
      return Judged.afterDirectSound(after, Optional.of(position));
    }
    if (!first.equals(itself)) {
      return Judged.afterPath(after, position, first.sound());
    }
    return direct(path, position).isPresent()
        ? Judged.afterDirectSound(0, Optional.of(position))
        : Judged.withoutAir(own.ms());
  }

  private First first(ChainPath path, String position, First itself) {
    First earliest =
        heard.getOrDefault(new Seat(position, path.input()), List.of()).stream()
            .filter(other -> !other.sound().equals(path.name()))
            .findFirst()
            .filter(other -> BY_TIME.compare(other, itself) < 0)
            .orElse(itself);
    return direct(path, position)
        .filter(direct -> direct.samples() <= earliest.at().samples())
        .map(direct -> new First(SeatArrival.DIRECT_SOUND, direct))
        .orElse(earliest);
  }

  private Optional<Latency> direct(ChainPath path, String position) {
    return path.direct()
        .map(air -> new Latency(air.samples(chain.conditions()), chain.rate()))
        .or(() -> chain.positions().get(position).direct(chain.conditions()));
  }

  private Latency at(ChainPath path, String position, Latency own) {
    String loudspeaker = path.loudspeaker().orElseThrow().name();
    return own.plus(chain.positions().get(position).throwOf(loudspeaker, chain.conditions()));
  }

  /** What the limits of a path's listener are applied to; at the worst of its positions. */
  public Judged judged(ChainPath path) {
    return judged(path, delays.get(path.name()));
  }

  /**
   * The same if this path alone were so late.
   *
   * @param own from its source through all its stages
   */
  public Judged judged(ChainPath path, Latency own) {
    return seats(path, own).stream()
        .map(SeatArrival::judged)
        .max(Comparator.comparingDouble(Judged::ms))
        .orElseGet(() -> withoutPositions(path, own));
  }

  private Judged withoutPositions(ChainPath path, Latency own) {
    if (path.listener() != Listener.HOUSE) {
      return Judged.fromSource(own.ms(), Optional.empty());
    }
    return path.direct()
        .map(air -> new Latency(air.samples(chain.conditions()), chain.rate()))
        .map(direct -> Math.max(0, own.minus(direct).ms()))
        .map(ms -> Judged.afterDirectSound(ms, Optional.empty()))
        .orElseGet(() -> Judged.withoutAir(own.minus(air(path)).ms()));
  }

  private Latency air(ChainPath path) {
    return sum(chain, path, stage -> stage.delay().isAir());
  }
}
