package dev.loopgauge.chain;

import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * A rig as its chain file describes it. Maps keep the order of the file.
 *
 * @param name what the rig is called
 * @param rate its word clock; every delay is told in samples of it
 * @param blockSize samples the host computes at a time, 1 to {@value Conditions#LARGEST_BLOCK}; it
 *     matters only where a stage {@linkplain #countsBlocks counts blocks}
 * @param airTemperatureC the air between loudspeakers and listeners, in degrees C
 * @param stages what adds delay, by name
 * @param paths the ways of sound, by name
 * @param pictures the ways of pictures, by name
 * @param mixes paths that are heard together, by the name of the mix
 * @param limits how late each listener may hear; the built-in limits where none are given
 * @param hosts the computers with settings of their own, by name
 * @param positions the places at which loudspeakers are heard, by name
 * @param reference where the cable straight back is plugged in
 * @param notices what may be a mistake in the file
 */
public record Chain(
    String name,
    SampleRate rate,
    int blockSize,
    double airTemperatureC,
    Map<String, Stage> stages,
    Map<String, ChainPath> paths,
    Map<String, Picture> pictures,
    Map<String, Mix> mixes,
    Map<Listener, ListenerLimits> limits,
    Map<String, HostSettings> hosts,
    Map<String, Position> positions,
    Optional<Patch> reference,
    List<Notice> notices) {
  /**
   * Copies the maps and checks that everything named exists and can be computed.
   *
   * @throws IllegalArgumentException when block size or temperature are out of range, a name is
   *     unknown, a path has frames or a loudspeaker beside a stage of air, or a picture has frames
   *     and no frame rate
   */
  public Chain {
    new Conditions(rate, blockSize, airTemperatureC, Optional.empty());
    stages = inOrder(stages);
    paths = inOrder(paths);
    pictures = inOrder(pictures);
    mixes = inOrder(mixes);
    limits = completed(limits);
    hosts = inOrder(hosts);
    positions = inOrder(positions);
    notices = List.copyOf(notices);
    new ChainRules(stages, pictures, hosts, positions).check(paths.values(), mixes.values());
  }

  private static <V> Map<String, V> inOrder(Map<String, V> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  private static Map<Listener, ListenerLimits> completed(Map<Listener, ListenerLimits> given) {
    Map<Listener, ListenerLimits> all = new EnumMap<>(Listener.class);
    for (Listener listener : Listener.values()) {
      all.put(listener, given.getOrDefault(listener, ListenerLimits.builtIn(listener)));
    }
    return Collections.unmodifiableMap(all);
  }

  private ChainBuilder changed() {
    return new ChainBuilder(this);
  }

  /** The same rig with its host at another block size. */
  public Chain withBlockSize(int newBlockSize) {
    return changed().blockSize(newBlockSize).build();
  }

  /** The same rig on another word clock; computers with a rate of their own keep it. */
  public Chain withSampleRate(SampleRate newRate) {
    return changed().rate(newRate).build();
  }

  /** The same rig in air of another temperature, in degrees C. */
  public Chain withAirTemperature(double celsius) {
    return changed().airTemperatureC(celsius).build();
  }

  /** The same rig with a stage put in, or put in the place of the one of the same name. */
  public Chain withStage(Stage stage) {
    return changed().stages(with(stages, stage.name(), stage)).build();
  }

  /** The same rig with a computer's settings put in the place of those of the same name. */
  public Chain withHost(HostSettings settings) {
    return changed().hosts(with(hosts, settings.name(), settings)).build();
  }

  /** The same rig with a position put in the place of the one of the same name. */
  public Chain withPosition(Position position) {
    return changed().positions(with(positions, position.name(), position)).build();
  }

  private static <V> Map<String, V> with(Map<String, V> all, String name, V value) {
    Map<String, V> changed = new LinkedHashMap<>(all);
    changed.put(name, value);
    return changed;
  }

  /** The same rig with each path changed alike; they keep their names. */
  public Chain withPaths(UnaryOperator<ChainPath> change) {
    Map<String, ChainPath> changed = new LinkedHashMap<>();
    paths.forEach((pathName, path) -> changed.put(pathName, change.apply(path)));
    return changed().paths(changed).build();
  }

  /** The same rig with this path of it alone, and so without mixes. */
  public Chain only(ChainPath path) {
    return changed().paths(Map.of(path.name(), path)).mixes(Map.of()).build();
  }

  /**
   * The path of that name.
   *
   * @throws UnknownPathException when there is none
   */
  public ChainPath path(String pathName) {
    ChainPath path = paths.get(pathName);
    if (path == null) {
      throw new UnknownPathException(name, pathName, paths.keySet());
    }
    return path;
  }

  /** Whether any stage is stated in blocks, so that the block size matters. */
  public boolean countsBlocks() {
    for (Stage stage : stages.values()) {
      if (stage.delay() instanceof Delay.Blocks) {
        return true;
      }
    }
    return false;
  }

  /** What the delays of sound must know to become samples of the rig. */
  public Conditions conditions() {
    return new Conditions(rate, blockSize, airTemperatureC, Optional.empty());
  }

  /** What a stage of sound adds, in samples of the rig. */
  public Latency delay(Stage stage) {
    return new Latency(samples(stage, stage.delay(), conditions()), rate);
  }

  /** How far off that may be either way, in samples of the rig. */
  public double toleranceSamples(Stage stage) {
    return samples(stage, stage.tolerance(), conditions());
  }

  /** How late a picture is from lens to screen. */
  public Latency delay(Picture picture) {
    Conditions conditions = new Conditions(rate, blockSize, airTemperatureC, picture.frameRate());
    double samples = picture.stated().isPresent() ? picture.stated().get().samples(conditions) : 0;
    for (String name : picture.stages()) {
      Stage stage = stages.get(name);
      samples += samples(stage, stage.delay(), conditions);
    }
    return new Latency(samples, rate);
  }

  /** A stage counts at its own computer's block size and rate. */
  private double samples(Stage stage, Delay delay, Conditions rig) {
    if (stage.host().isEmpty()) {
      return delay.samples(rig);
    }
    Conditions own = hosts.get(stage.host().get()).within(rig);
    return delay.samples(own) * rate.hertz() / own.rate().hertz();
  }
}
