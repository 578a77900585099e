package dev.loopgauge.chain;

import java.util.Locale;
import java.util.OptionalDouble;

/** A change of where sound is heard, or of the air that it goes through. */
public sealed interface PlaceChange extends Change {
  /**
   * The position of that name.
   *
   * @throws ChangeFormatException when the chain has none
   */
  private static Position in(Chain chain, String name) {
    Position found = chain.positions().get(name);
    if (found == null) {
      throw new ChangeFormatException(
          "expected a position of '" + chain.name() + "', found " + Shown.quoted(name),
          Nearest.hint(name, chain.positions().keySet()));
    }
    return found;
  }

  /**
   * A position is nearer to the source, or further away. Its loudspeakers move with it: see {@link
   * Position#movedTo}.
   *
   * @param position its name
   * @param metres how far from the source it is
   */
  record Moved(String position, double metres) implements PlaceChange {
    /**
     * Checks the distance.
     *
     * @throws IllegalArgumentException when out of range
     */
    public Moved {
      new Delay.Metres(metres);
    }

    private static double direct(Position found) {
      OptionalDouble stated = found.directMetres();
      return stated.orElseThrow(
          () ->
              new ChangeFormatException(
                  "position '" + found.name() + "' has no direct-metres",
                  "state them, or change position."
                      + (found.name() + ".throw-metres.")
                      + found.throwMetres().keySet().iterator().next()));
    }

    @Override
    public ChangeKind kind() {
      return ChangeKind.DISTANCE;
    }

    @Override
    public String value() {
      return Shown.rounded(metres);
    }

    @Override
    public String written() {
      return "position." + position + ".direct-metres=" + value();
    }

    @Override
    public Chain on(Chain chain) {
      Position found = in(chain, position);
      direct(found);
      return chain.withPosition(found.movedTo(metres));
    }

    @Override
    public String told(Chain before) {
      return String.format(
          Locale.ROOT,
          "'%s' is %s m from the source, not %s",
          position,
          Shown.rounded(metres),
          Shown.rounded(direct(in(before, position))));
    }

    @Override
    public String check() {
      return "Check the distance with a tape measure.";
    }
  }

  /**
   * A position is at another distance from one of its loudspeakers; nothing else moves.
   *
   * @param position its name
   * @param loudspeaker the loudspeaker
   * @param metres how far away that is
   */
  record Throw(String position, String loudspeaker, double metres) implements PlaceChange {
    /**
     * Checks the distance.
     *
     * @throws IllegalArgumentException when out of range
     */
    public Throw {
      new Delay.Metres(metres);
    }

    private double stated(Chain chain) {
      Position found = in(chain, position);
      Double stated = found.throwMetres().get(loudspeaker);
      if (stated == null) {
        throw new ChangeFormatException(
            "expected a loudspeaker of '" + position + "', found " + Shown.quoted(loudspeaker),
            Nearest.hint(loudspeaker, found.throwMetres().keySet()));
      }
      return stated;
    }

    @Override
    public ChangeKind kind() {
      return ChangeKind.DISTANCE;
    }

    @Override
    public String value() {
      return Shown.rounded(metres);
    }

    @Override
    public String written() {
      return "position." + position + ".throw-metres." + loudspeaker + "=" + value();
    }

    @Override
    public Chain on(Chain chain) {
      stated(chain);
      return chain.withPosition(in(chain, position).withThrow(loudspeaker, metres));
    }

    @Override
    public String told(Chain before) {
      return String.format(
          Locale.ROOT,
          "'%s' is %s m from '%s', not %s",
          position,
          Shown.rounded(metres),
          loudspeaker,
          Shown.rounded(stated(before)));
    }

    @Override
    public String check() {
      return "Check the distance with a tape measure.";
    }
  }

  /**
   * The air is warmer or colder.
   *
   * @param celsius its temperature, as {@link Air} covers it, in degrees C
   */
  record AirTemperature(double celsius) implements PlaceChange {
    /**
     * Checks the range.
     *
     * @throws IllegalArgumentException when out of range
     */
    public AirTemperature {
      Air.metresPerSecond(celsius);
    }

    @Override
    public ChangeKind kind() {
      return ChangeKind.AIR_TEMPERATURE;
    }

    @Override
    public String value() {
      return Shown.rounded(celsius);
    }

    @Override
    public Chain on(Chain chain) {
      return chain.withAirTemperature(celsius);
    }

    @Override
    public String told(Chain before) {
      return String.format(
          Locale.ROOT,
          "the air is at %s degrees C, not %s",
          Shown.rounded(celsius),
          Shown.rounded(before.airTemperatureC()));
    }
  }
}
