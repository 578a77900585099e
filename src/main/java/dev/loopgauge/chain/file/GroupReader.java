package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.Shown;
import dev.loopgauge.chain.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Reads the {@code groups} of a chain file, and lists of sound stages that may name them. */
final class GroupReader implements EntryReader<List<String>> {
  private final Map<String, Stage> stages;

  GroupReader(Map<String, Stage> stages) {
    this.stages = stages;
  }

  /** The stages of a group, in order. */
  @Override
  public List<String> read(String name, YamlValue group) throws ChainFormatException {
    if (stages.containsKey(name)) {
      throw group.refuseKey(
          "a name that no stage has", Shown.quoted(name), "rename the group or the stage");
    }
    List<String> names = new ArrayList<>();
    for (YamlValue item : group.items("stage")) {
      names.addAll(expanded(item, Map.of()));
    }
    return names;
  }

  /** The stages that an item of a path's list stands for: itself, or those of a group. */
  List<String> expanded(YamlValue item, Map<String, List<String>> groups)
      throws ChainFormatException {
    List<String> known = new ArrayList<>(stages.keySet());
    known.addAll(groups.keySet());
    String name = item.nameOf("stage", known);
    if (groups.containsKey(name)) {
      return groups.get(name);
    }
    if (stages.get(name).delay() instanceof Delay.Frames) {
      throw item.refuse(
          "a stage of sound, not one in frames",
          "list it under pictures, and name the picture in the path");
    }
    return List.of(name);
  }
}
