package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Mix;
import dev.loopgauge.chain.MixEntry;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads the {@code mixes} of a chain file: lists of names of paths, or of paths with more said. */
final class MixReader implements EntryReader<Mix> {
  private static final String OFFSET = "offset-ms";
  private static final String LEVEL = "level-db";

  private final Collection<String> paths;

  MixReader(Collection<String> paths) {
    this.paths = paths;
  }

  @Override
  public Mix read(String name, YamlValue mix) throws ChainFormatException {
    Map<String, MixEntry> entries = new LinkedHashMap<>();
    for (YamlValue item : mix.items("path")) {
      MixEntry entry = entry(item);
      if (entries.putIfAbsent(entry.path(), entry) != null) {
        throw item.refuse("each path once in the mix", "take one of the two out");
      }
    }
    return new Mix(name, List.copyOf(entries.values()));
  }

  private MixEntry entry(YamlValue item) throws ChainFormatException {
    if (item.scalar().isPresent()) {
      return new MixEntry(item.nameOf("path", paths), 0, 0);
    }
    YamlFields fields = item.fields("a path of a mix", List.of("path", OFFSET, LEVEL));
    return new MixEntry(
        fields.required("path", "{ path: vocal, level-db: -6 }").nameOf("path", paths),
        fields
            .optional(OFFSET, value -> value.number(OFFSET, 0, MixEntry.LARGEST_OFFSET_MS))
            .orElse(0.0),
        fields
            .optional(LEVEL, value -> value.number(LEVEL, MixEntry.LOWEST_DB, MixEntry.HIGHEST_DB))
            .orElse(0.0));
  }
}
