package dev.loopgauge.chain;

import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What listeners hear, and so what their limits are applied to.
 *
 * <p>A performer's limits count from the source. Those of the house count from the first sound that
 * its seat hears: the direct sound, or an earlier path of the same input at that position. Where
 * neither is stated they are applied to the path's delay without air.
 */
public final class Hearing {
  private record Seat(String position, String input) {}

  private record First(String sound, Latency at) {
    boolean isBefore(First other) {
      return at.samples() < other.at.samples();
    }
  }

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
    for (List<First> sounds : heard.values()) {
      sounds.sort(Comparator.comparingDouble(sound -> sound.at().samples()));
    }
  }

  /** With every path as its chain predicts it. */
  public static Hearing predicted(Chain chain) {
    Map<String, Latency> delays = new LinkedHashMap<>();
    for (ChainPath path : chain.paths().values()) {
      delays.put(path.name(), through(chain, path));
    }
    return new Hearing(chain, delays);
  }

  /** The same, with what counts for one path alone. */
  static Hearing around(Chain chain, ChainPath path) {
    Map<String, Latency> delays = new LinkedHashMap<>();
    delays.put(path.name(), through(chain, path));
    List<String> seats = positions(path);
    for (ChainPath other : chain.paths().values()) {
      if (other.input().equals(path.input()) && !Collections.disjoint(positions(other), seats)) {
        delays.put(other.name(), through(chain, other));
      }
    }
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
    return path.loudspeaker().isPresent() ? path.loudspeaker().get().positions() : List.of();
  }

  private static Latency through(Chain chain, ChainPath path) {
    double samples = 0;
    for (String name : path.stages()) {
      samples += chain.delay(chain.stages().get(name)).samples();
    }
    return new Latency(samples, chain.rate());
  }

  /** How late a path is at each position that hears it. */
  public List<SeatArrival> seats(ChainPath path) {
    return seats(path, delays.get(path.name()));
  }

  private List<SeatArrival> seats(ChainPath path, Latency own) {
    List<SeatArrival> seats = new ArrayList<>();
    for (String position : positions(path)) {
      seats.add(seat(path, position, own));
    }
    return seats;
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
            .filter(other -> other.isBefore(itself))
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
    if (positions(path).isEmpty()) {
      return withoutPositions(path, own);
    }
    List<SeatArrival> seats = seats(path, own);
    Judged worst = seats.get(0).judged();
    for (SeatArrival seat : seats) {
      worst = seat.judged().ms() > worst.ms() ? seat.judged() : worst;
    }
    return worst;
  }

  private Judged withoutPositions(ChainPath path, Latency own) {
    if (path.listener() != Listener.HOUSE) {
      return Judged.fromSource(own.ms(), Optional.empty());
    }
    if (path.direct().isEmpty()) {
      return Judged.withoutAir(own.minus(air(path)).ms());
    }
    double direct = path.direct().get().samples(chain.conditions());
    double after = own.minus(new Latency(direct, chain.rate())).ms();
    return Judged.afterDirectSound(Math.max(0, after), Optional.empty());
  }

  private Latency air(ChainPath path) {
    double samples = 0;
    for (String name : path.stages()) {
      Stage stage = chain.stages().get(name);
      samples += stage.delay().isAir() ? chain.delay(stage).samples() : 0;
    }
    return new Latency(samples, chain.rate());
  }
}
