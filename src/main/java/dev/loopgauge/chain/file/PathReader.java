package dev.loopgauge.chain.file;

import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.Instrument;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.Stage;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads the {@code paths} of a chain file. A path that does not name its {@code input} carries that
 * of all other such paths that begin with the same stage.
 */
final class PathReader {
  private static final String DIRECT_METRES = "direct-metres";
  private static final String DIRECT_FEET = "direct-feet";
  private static final String RETURNS = "returns-to-talker";
  private static final List<String> KEYS =
      List.of(
          "listener",
          "stages",
          "loop",
          "picture",
          "instrument",
          "input",
          DIRECT_METRES,
          DIRECT_FEET,
          RETURNS);
  static final Map<String, Listener> LISTENERS = YamlChoice.by(Listener.values(), Listener::label);
  private static final Map<String, Instrument> INSTRUMENTS =
      YamlChoice.by(Instrument.values(), Instrument::label);
  private static final Map<String, Boolean> ANSWERS =
      YamlChoice.by(new Boolean[] {true, false}, answer -> answer ? "yes" : "no");

  private final Map<String, Stage> stages;
  private final Collection<String> pictures;

  PathReader(Map<String, Stage> stages, Collection<String> pictures) {
    this.stages = stages;
    this.pictures = pictures;
  }

  ChainPath read(String name, YamlValue path) throws ChainFormatException {
    YamlFields fields = path.fields("a path", KEYS);
    Listener listener =
        fields.required("listener", "listener: house").choice("listener", LISTENERS);
    List<String> passed = ofSound(fields.required("stages", "stages: [console]"));
    return new ChainPath(
        name,
        listener,
        passed,
        fields.optional("loop", loop -> loop.namesOf("stage of this path", passed)),
        fields.optional("picture", picture -> picture.nameOf("picture", pictures)),
        fields.optional("instrument", played -> played.choice("instrument", INSTRUMENTS)),
        fields.text("input").orElse(passed.get(0)),
        direct(fields),
        fields.optional(RETURNS, returns -> returns.choice("answer", ANSWERS)).orElse(false));
  }

  private static Optional<Delay> direct(YamlFields fields) throws ChainFormatException {
    List<String> stated = fields.among(List.of(DIRECT_METRES, DIRECT_FEET));
    if (stated.isEmpty()) {
      return Optional.empty();
    }
    fields.checkSingle(stated, "one direct distance in the path", "keep one of them");
    String key = stated.get(0);
    double distance = fields.values().get(key).number(key, 0, Delay.LARGEST);
    return Optional.of(
        key.equals(DIRECT_FEET) ? new Delay.Feet(distance) : new Delay.Metres(distance));
  }

  private List<String> ofSound(YamlValue list) throws ChainFormatException {
    List<String> names = new ArrayList<>();
    for (YamlValue item : list.items("stage")) {
      String name = item.nameOf("stage", stages.keySet());
      if (stages.get(name).delay() instanceof Delay.Frames) {
        throw item.refuse(
            "a stage of sound, not one in frames",
            "list it under pictures, and name the picture in the path");
      }
      names.add(name);
    }
    return names;
  }
}
