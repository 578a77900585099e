package dev.loopgauge.chain;

import java.util.List;

/**
 * Where a path runs through the plug-in host. A stage is the host's when it is stated in blocks,
 * when the host or a named computer reports or has it, or when its name begins with {@code host};
 * so is whatever stands between two of these.
 *
 * @param before the names of the stages before the host; all where the path never enters it
 * @param inside the names of those in it
 * @param after the names of those after it
 */
public record Host(List<String> before, List<String> inside, List<String> after) {
  private static final String HOST = "host";

  /** Copies the lists. */
  public Host {
    before = List.copyOf(before);
    inside = List.copyOf(inside);
    after = List.copyOf(after);
  }

  /** The host on a path of the chain. */
  public static Host on(Chain chain, ChainPath path) {
    List<String> names = path.stages();
    int start = 0;
    while (start < names.size() && !isMarked(chain, names.get(start))) {
      start++;
    }
    int end = names.size();
    while (end > start && !isMarked(chain, names.get(end - 1))) {
      end--;
    }
    return new Host(
        names.subList(0, start), names.subList(start, end), names.subList(end, names.size()));
  }

  private static boolean isMarked(Chain chain, String name) {
    Stage stage = chain.stages().get(name);
    return stage.delay() instanceof Delay.Blocks
        || stage.host().isPresent()
        || stage.name().startsWith(HOST)
        || (stage.reportedBy().isPresent() && isHost(chain, stage.reportedBy().get()));
  }

  private static boolean isHost(Chain chain, String reporter) {
    return HOST.equalsIgnoreCase(reporter) || chain.hosts().containsKey(reporter);
  }
}
