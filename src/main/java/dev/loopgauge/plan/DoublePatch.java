package dev.loopgauge.plan;

import java.util.List;

/**
 * An input that is patched a second time, before the host.
 *
 * @param input the input
 * @param paths the paths that are fed from the second patch, at least one
 */
public record DoublePatch(String input, List<String> paths) {
  /** Copies the list. */
  public DoublePatch {
    paths = List.copyOf(paths);
  }
}
