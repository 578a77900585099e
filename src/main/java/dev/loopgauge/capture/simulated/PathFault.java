package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.Nearest;
import java.util.Collection;
import java.util.Optional;

/**
 * A fault, and the path that has it.
 *
 * @param path the path's name; empty for the path that is measured, or for all where none is
 * @param fault what is wrong
 */
public record PathFault(Optional<String> path, Fault fault) {
  /**
   * The fault written as the {@code --fault} option takes it: {@code block-size=128}, {@code
   * inverted} or, for one path of several, {@code truck-mix:inverted}. The path ends at the first
   * colon before any equals sign.
   *
   * @param paths the names of the rig's paths
   * @throws FaultFormatException when there is no such path or fault, or its value is missing, no
   *     number or out of range
   */
  public static PathFault parse(String text, Collection<String> paths) {
    int colon = colon(text);
    Optional<String> path =
        colon < 0 ? Optional.empty() : Optional.of(known(text.substring(0, colon), paths));
    Fault fault = FaultFormat.parse(text.substring(colon + 1));
    if (fault instanceof RoutingFault routing) {
      known(routing.other(), paths);
    }
    return new PathFault(path, fault);
  }

  private static int colon(String text) {
    int equals = text.indexOf('=');
    int colon = text.indexOf(':');
    return equals >= 0 && colon > equals ? -1 : colon;
  }

  private static String known(String path, Collection<String> paths) {
    if (!paths.contains(path)) {
      throw new FaultFormatException(
          "the rig has no path '" + path + "'", Nearest.hint(path, paths));
    }
    return path;
  }
}
