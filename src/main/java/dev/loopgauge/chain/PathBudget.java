package dev.loopgauge.chain;

import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.List;

/**
 * How late a path is predicted to be. Tolerances of stages add up, so that a path whose stages all
 * keep theirs keeps its own.
 *
 * @param name the path
 * @param listener who hears it
 * @param limits how late that listener may hear
 * @param rate the word clock
 * @param speedOfSound in the air of the chain, metres a second
 * @param stages the delay of each stage, from source to listener
 * @param loopStages those that a patched measurement runs through
 * @param seats how late it is at each position that hears it; none for a path without a loudspeaker
 * @param judged what its listener's limits are applied to
 */
public record PathBudget(
    String name,
    Listener listener,
    ListenerLimits limits,
    SampleRate rate,
    double speedOfSound,
    List<StageDelay> stages,
    List<StageDelay> loopStages,
    List<SeatArrival> seats,
    Judged judged) {
  /** Copies the lists. */
  public PathBudget {
    stages = List.copyOf(stages);
    loopStages = List.copyOf(loopStages);
    seats = List.copyOf(seats);
  }

  /** The delay of the whole path, up to the loudspeaker where positions hear it. */
  public Latency delay() {
    return sum(stages, rate);
  }

  /** How far off the delay may be either way, in samples. */
  public double toleranceSamples() {
    return tolerance(stages);
  }

  /** The delay of what a patched measurement runs through. */
  public Latency loop() {
    return sum(loopStages, rate);
  }

  /** How far off the loop's delay may be either way, in samples. */
  public double loopToleranceSamples() {
    return tolerance(loopStages);
  }

  /** How many metres further away a source would have to stand to be as late. */
  public double equivalentMetres() {
    return delay().seconds() * speedOfSound;
  }

  /** How many feet further away a source would have to stand to be as late. */
  public double equivalentFeet() {
    return equivalentMetres() / Air.METRES_PER_FOOT;
  }

  /** How what is judged, tolerance aside, stands against the listener's limits. */
  public Standing standing() {
    return limits.standing(judged.ms());
  }

  /** All of these delays one after the other; they are at this rate. */
  static Latency sum(List<StageDelay> parts, SampleRate rate) {
    double samples = 0;
    for (StageDelay part : parts) {
      samples += part.delay().samples();
    }
    return new Latency(samples, rate);
  }

  private static double tolerance(List<StageDelay> parts) {
    double samples = 0;
    for (StageDelay part : parts) {
      samples += part.toleranceSamples();
    }
    return samples;
  }
}
