package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Air;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBuilder;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.HostSettings;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.ListenerLimits;
import dev.loopgauge.chain.Picture;
import dev.loopgauge.chain.Position;
import dev.loopgauge.chain.Stage;
import dev.loopgauge.signal.SampleRate;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads chain files. Needed are {@code sample-rate}, {@code stages} and {@code paths}; {@code
 * block-size} too where a stage is stated in blocks. Left out, {@code chain} is the name of the
 * file and {@code air-temperature} is 20 degrees C. Whatever else is in the text, and whatever a
 * rig can't be, is refused where it stands.
 */
public final class ChainParser {
  /** The longest chain file read, in characters. */
  public static final int LONGEST_FILE = 250_000;

  /** The most stages, paths, or entries of any other list, in one chain file. */
  public static final int MOST_ENTRIES = 1_000;

  private static final List<String> KEYS =
      List.of(
          "chain",
          ClockReader.RATE,
          ClockReader.BLOCK_SIZE,
          "air-temperature",
          "reference",
          "hosts",
          "stages",
          "groups",
          "paths",
          "positions",
          "pictures",
          "mixes",
          "listeners");

  private ChainParser() {}

  /**
   * Reads the text of a chain file.
   *
   * @param yaml the text
   * @param sourceName what errors call the file
   * @throws ChainFormatException when the text is not a chain file; it says where and why
   */
  public static Chain parse(String yaml, String sourceName) throws ChainFormatException {
    YamlFields fields = YamlText.compose(yaml, sourceName).fields("a chain file", KEYS);
    ClockReader clocks = new ClockReader();
    SampleRate rate = clocks.rate(fields.required(ClockReader.RATE, "sample-rate: 48000"));
    Map<String, HostSettings> hosts = section(fields, "hosts", new HostReader(clocks));
    Map<String, Stage> stages =
        readAll(
            "stages",
            fields.required("stages", "stages: { console: { ms: 0.8 } }"),
            new StageReader(hosts.keySet()));
    int blockSize = blockSize(fields, stages, hosts, clocks);
    ChainBuilder chain =
        new ChainBuilder(fields.text("chain").orElse(sourceName), rate)
            .blockSize(blockSize)
            .airTemperatureC(airTemperature(fields))
            .hosts(hosts)
            .stages(stages)
            .reference(fields.optional("reference", PatchReader::ofReference))
            .limits(fields.optional("listeners", ChainParser::limits).orElse(Map.of()))
            .notices(clocks.notices());
    return withPaths(chain, fields, stages).build();
  }

  private static ChainBuilder withPaths(
      ChainBuilder chain, YamlFields fields, Map<String, Stage> stages)
      throws ChainFormatException {
    Map<String, List<String>> groups = section(fields, "groups", new GroupReader(stages));
    Map<String, Position> positions = section(fields, "positions", new PositionReader());
    Map<String, Picture> pictures = section(fields, "pictures", new PictureReader(stages));
    Map<String, ChainPath> paths =
        readAll(
            "paths",
            fields.required("paths", "paths: { vocal: { listener: house, stages: [console] } }"),
            new PathReader(stages, groups, pictures.keySet(), positions));
    return chain
        .positions(positions)
        .pictures(pictures)
        .paths(paths)
        .mixes(section(fields, "mixes", new MixReader(paths.keySet())));
  }

  private static int blockSize(
      YamlFields fields,
      Map<String, Stage> stages,
      Map<String, HostSettings> hosts,
      ClockReader clocks)
      throws ChainFormatException {
    if (countsBlocks(stages, hosts)) {
      fields.required(ClockReader.BLOCK_SIZE, "block-size: 64, since a stage counts blocks");
    }
    return fields
        .optional(ClockReader.BLOCK_SIZE, clocks::blockSize)
        .orElse(ChainBuilder.UNUSED_BLOCK_SIZE);
  }

  /** Whether a stage is stated in blocks of the rig, not of a computer with a size of its own. */
  private static boolean countsBlocks(Map<String, Stage> stages, Map<String, HostSettings> hosts) {
    for (Stage stage : stages.values()) {
      boolean own =
          stage.host().isPresent() && hosts.get(stage.host().get()).blockSize().isPresent();
      if (stage.delay() instanceof Delay.Blocks && !own) {
        return true;
      }
    }
    return false;
  }

  private static double airTemperature(YamlFields fields) throws ChainFormatException {
    String what = "air-temperature in degrees C";
    return fields
        .optional("air-temperature", value -> value.number(what, Air.COLDEST_C, Air.WARMEST_C))
        .orElse(Air.REFERENCE_C);
  }

  private static Map<Listener, ListenerLimits> limits(YamlValue section)
      throws ChainFormatException {
    Map<Listener, ListenerLimits> limits = new EnumMap<>(Listener.class);
    YamlFields listeners = section.fields("listeners", List.copyOf(PathReader.LISTENERS.keySet()));
    for (Map.Entry<String, YamlValue> entry : listeners.values().entrySet()) {
      Listener listener = PathReader.LISTENERS.get(entry.getKey());
      limits.put(listener, LimitsReader.read(listener, entry.getValue()));
    }
    return limits;
  }

  private static <T> Map<String, T> section(YamlFields fields, String key, EntryReader<T> reader)
      throws ChainFormatException {
    YamlValue section = fields.values().get(key);
    return section == null ? Map.of() : readAll(key, section, reader);
  }

  private static <T> Map<String, T> readAll(String key, YamlValue section, EntryReader<T> reader)
      throws ChainFormatException {
    Map<String, YamlValue> entries = section.entries(key);
    if (entries.isEmpty()) {
      throw section.refuse("at least one entry", "write one, or take the section out");
    }
    Map<String, T> read = new LinkedHashMap<>();
    for (Map.Entry<String, YamlValue> entry : entries.entrySet()) {
      read.put(entry.getKey(), reader.read(entry.getKey(), entry.getValue()));
    }
    return read;
  }
}
