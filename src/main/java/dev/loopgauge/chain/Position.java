package dev.loopgauge.chain;

import dev.loopgauge.signal.Latency;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A seat or another place, and how far each sound is from there.
 *
 * @param name its name in the chain file
 * @param directMetres how far the source itself is, in metres, where its sound is heard directly
 * @param throwMetres how far each loudspeaker is, in metres, by its name
 */
public record Position(String name, OptionalDouble directMetres, Map<String, Double> throwMetres) {
  /**
   * Copies the map, and checks the distances.
   *
   * @throws IllegalArgumentException when a distance is out of range
   */
  public Position {
    throwMetres = Collections.unmodifiableMap(new LinkedHashMap<>(throwMetres));
    directMetres.ifPresent(Delay.Metres::new);
    throwMetres.values().forEach(Delay.Metres::new);
  }

  /**
   * The same position so far from the source. It moves along the line from the source past the
   * loudspeakers: what was 8 m behind it is 2 m away after 10 m.
   *
   * @throws IllegalStateException when the position states no distance from the source
   */
  public Position movedTo(double newDirectMetres) {
    double move =
        newDirectMetres
            - directMetres.orElseThrow(() -> new IllegalStateException(name + " hears no source"));
    Map<String, Double> moved = new LinkedHashMap<>();
    throwMetres.forEach((loudspeaker, metres) -> moved.put(loudspeaker, Math.abs(metres + move)));
    return new Position(name, OptionalDouble.of(newDirectMetres), moved);
  }

  /** The same position so far from one of its loudspeakers, the rest as it is. */
  public Position withThrow(String loudspeaker, double metres) {
    Map<String, Double> changed = new LinkedHashMap<>(throwMetres);
    changed.put(loudspeaker, metres);
    return new Position(name, directMetres, changed);
  }

  /** How long sound takes from a loudspeaker of this position. */
  public Latency throwOf(String loudspeaker, Conditions air) {
    return overAir(throwMetres.get(loudspeaker), air);
  }

  /** How long sound takes from the source itself, where it is heard. */
  public Optional<Latency> direct(Conditions air) {
    return directMetres.isPresent()
        ? Optional.of(overAir(directMetres.getAsDouble(), air))
        : Optional.empty();
  }

  private static Latency overAir(double metres, Conditions air) {
    return new Latency(air.samplesOfAir(metres), air.rate());
  }
}
