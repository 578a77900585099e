package dev.loopgauge.chain.file;

import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.Expectation;
import dev.loopgauge.chain.Instrument;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.Loudspeaker;
import dev.loopgauge.chain.Position;
import dev.loopgauge.chain.Shown;
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
final class PathReader implements EntryReader<ChainPath> {
  private static final String DIRECT_METRES = PositionReader.DIRECT_METRES;
  private static final String DIRECT_FEET = PositionReader.DIRECT_FEET;
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
          RETURNS,
          LoudspeakerReader.LOUDSPEAKER,
          LoudspeakerReader.POSITIONS,
          "patch",
          "expect");
  static final Map<String, Listener> LISTENERS = YamlChoice.by(Listener.values(), Listener::label);
  private static final Map<String, Instrument> INSTRUMENTS =
      YamlChoice.by(Instrument.values(), Instrument::label);
  private static final Map<String, Boolean> ANSWERS =
      YamlChoice.by(new Boolean[] {true, false}, answer -> answer ? "yes" : "no");

  private final Map<String, Stage> stages;
  private final Map<String, List<String>> groups;
  private final Collection<String> pictures;
  private final Map<String, Position> positions;

  PathReader(
      Map<String, Stage> stages,
      Map<String, List<String>> groups,
      Collection<String> pictures,
      Map<String, Position> positions) {
    this.stages = stages;
    this.groups = groups;
    this.pictures = pictures;
    this.positions = positions;
  }

  @Override
  public ChainPath read(String name, YamlValue path) throws ChainFormatException {
    YamlFields fields = path.fields("a path", KEYS);
    Listener listener =
        fields.required("listener", "listener: house").choice("listener", LISTENERS);
    YamlValue list = fields.required("stages", "stages: [console]");
    Optional<Loudspeaker> loudspeaker = new LoudspeakerReader(positions).read(fields);
    List<String> passed = stages(list, loudspeaker);
    return new ChainPath(
        name,
        listener,
        passed,
        fields.optional("loop", loop -> loop(loop, passed)),
        fields.optional("picture", picture -> picture.nameOf("picture", pictures)),
        fields.optional("instrument", played -> played.choice("instrument", INSTRUMENTS)),
        fields.text("input").orElse(passed.get(0)),
        direct(fields, loudspeaker),
        fields.optional(RETURNS, returns -> returns.choice("answer", ANSWERS)).orElse(false),
        fields.optional("patch", PatchReader::ofPath),
        loudspeaker,
        fields.optional("expect", ExpectReader::read).orElse(Expectation.NONE));
  }

  private List<String> stages(YamlValue list, Optional<Loudspeaker> loudspeaker)
      throws ChainFormatException {
    GroupReader reader = new GroupReader(stages);
    List<String> names = new ArrayList<>();
    for (YamlValue item : list.items("stage")) {
      for (String name : reader.expanded(item, groups)) {
        if (loudspeaker.isPresent() && stages.get(name).delay().isAir()) {
          throw item.refuse(
              "no stage of air beside a loudspeaker",
              Shown.quoted(name),
              "take it out: the air comes from the throw-metres of the positions");
        }
        names.add(name);
      }
    }
    return names;
  }

  private List<String> loop(YamlValue loop, List<String> passed) throws ChainFormatException {
    List<String> known = new ArrayList<>(passed);
    groups.forEach(
        (name, members) -> {
          if (passed.containsAll(members)) {
            known.add(name);
          }
        });
    List<String> names = new ArrayList<>();
    for (YamlValue item : loop.items("stage of this path")) {
      String name = item.nameOf("stage of this path", known);
      names.addAll(groups.getOrDefault(name, List.of(name)));
    }
    return names;
  }

  private Optional<Delay> direct(YamlFields fields, Optional<Loudspeaker> loudspeaker)
      throws ChainFormatException {
    List<String> stated = fields.among(List.of(DIRECT_METRES, DIRECT_FEET));
    if (stated.isEmpty()) {
      return Optional.empty();
    }
    fields.checkSingle(stated, "one direct distance in the path", "keep one of them");
    String key = stated.get(0);
    YamlValue value = fields.values().get(key);
    for (String name : loudspeaker.map(Loudspeaker::positions).orElse(List.of())) {
      if (positions.get(name).directMetres().isPresent()) {
        throw value.refuseKey(
            "one direct distance",
            key + " in the path and in position '" + name + "'",
            "keep that of the position");
      }
    }
    double distance = value.number(key, 0, Delay.LARGEST);
    return Optional.of(
        key.equals(DIRECT_FEET) ? new Delay.Feet(distance) : new Delay.Metres(distance));
  }
}
