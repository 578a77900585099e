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
 * @param rate the one word clock
 * @param blockSize samples the host computes at a time, 1 to {@value Conditions#LARGEST_BLOCK}; it
 *     matters only where a stage {@linkplain #countsBlocks counts blocks}
 * @param airTemperatureC the air between loudspeakers and listeners, in degrees C
 * @param stages what adds delay, by name
 * @param paths the ways of sound, by name
 * @param pictures the ways of pictures, by name
 * @param mixes paths that are heard together, by the name of the mix
 * @param limits how late each listener may hear; the built-in limits where none are given
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
    Map<Listener, ListenerLimits> limits) {
  /**
   * Copies the maps and checks that everything named exists and can be computed.
   *
   * @throws IllegalArgumentException when block size or temperature are out of range, a name is
   *     unknown, a path has frames, or a picture has frames and no frame rate
   */
  public Chain {
    new Conditions(rate, blockSize, airTemperatureC, Optional.empty());
    stages = inOrder(stages);
    paths = inOrder(paths);
    pictures = inOrder(pictures);
    mixes = inOrder(mixes);
    limits = completed(limits);
    for (ChainPath path : paths.values()) {
      if (path.picture().isPresent()) {
        require(pictures, path.picture().get());
      }
      checkStages(stages, path.stages(), false);
    }
    for (Picture picture : pictures.values()) {
      checkStages(stages, picture.stages(), picture.frameRate().isPresent());
    }
    for (Mix mix : mixes.values()) {
      for (MixEntry entry : mix.entries()) {
        require(paths, entry.path());
      }
    }
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

  private static void checkStages(Map<String, Stage> known, List<String> names, boolean frames) {
    for (String name : names) {
      require(known, name);
      if (known.get(name).delay() instanceof Delay.Frames && !frames) {
        throw new IllegalArgumentException(
            "frames need a picture with a frame rate; stage '" + name + "' is used without");
      }
    }
  }

  private static void require(Map<String, ?> known, String name) {
    if (!known.containsKey(name)) {
      throw new IllegalArgumentException("names must be defined in the chain, not '" + name + "'");
    }
  }

  /** The same rig with its host at another block size. */
  public Chain withBlockSize(int newBlockSize) {
    return new Chain(
        name, rate, newBlockSize, airTemperatureC, stages, paths, pictures, mixes, limits);
  }

  /** The same rig on another word clock. */
  public Chain withSampleRate(SampleRate newRate) {
    return new Chain(
        name, newRate, blockSize, airTemperatureC, stages, paths, pictures, mixes, limits);
  }

  /** The same rig with a stage put in, or put in the place of the one of the same name. */
  public Chain withStage(Stage stage) {
    Map<String, Stage> changed = new LinkedHashMap<>(stages);
    changed.put(stage.name(), stage);
    return new Chain(
        name, rate, blockSize, airTemperatureC, changed, paths, pictures, mixes, limits);
  }

  /** The same rig with each path changed alike; they keep their names. */
  public Chain withPaths(UnaryOperator<ChainPath> change) {
    Map<String, ChainPath> changed = new LinkedHashMap<>();
    paths.forEach((pathName, path) -> changed.put(pathName, change.apply(path)));
    return new Chain(
        name, rate, blockSize, airTemperatureC, stages, changed, pictures, mixes, limits);
  }

  /** The same rig with this path of it alone, and so without mixes. */
  public Chain only(ChainPath path) {
    return new Chain(
        name,
        rate,
        blockSize,
        airTemperatureC,
        stages,
        Map.of(path.name(), path),
        pictures,
        Map.of(),
        limits);
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
    return stages.values().stream().anyMatch(stage -> stage.delay() instanceof Delay.Blocks);
  }

  /** What the delays of sound must know to become samples. */
  public Conditions conditions() {
    return new Conditions(rate, blockSize, airTemperatureC, Optional.empty());
  }

  /** How late a picture is from lens to screen. */
  public Latency delay(Picture picture) {
    Conditions conditions = new Conditions(rate, blockSize, airTemperatureC, picture.frameRate());
    double samples = picture.stated().map(delay -> delay.samples(conditions)).orElse(0.0);
    for (String stage : picture.stages()) {
      samples += stages.get(stage).delay().samples(conditions);
    }
    return new Latency(samples, rate);
  }
}
