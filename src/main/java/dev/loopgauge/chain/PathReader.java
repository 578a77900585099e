package dev.loopgauge.chain;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;

/** Reads the {@code paths} of a chain file. */
final class PathReader {
  private static final List<String> KEYS =
      List.of("listener", "stages", "loop", "picture", "instrument");
  static final Map<String, Listener> LISTENERS = YamlChoice.by(Listener.values(), Listener::label);
  private static final Map<String, Instrument> INSTRUMENTS =
      YamlChoice.by(Instrument.values(), Instrument::label);

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
        fields.optional("instrument", played -> played.choice("instrument", INSTRUMENTS)));
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
