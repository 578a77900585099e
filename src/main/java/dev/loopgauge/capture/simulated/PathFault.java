package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.Nearest;
import java.util.Collection;
import java.util.Optional;

/**
 * A fault, and the path that has it.
 *
 * @param path the path's name; empty for the path that is measured, or for all where none is
 * @param fault what is wrong
 * @param when from when to when
 */
public record PathFault(Optional<String> path, Fault fault, FaultTime when) {
  /**
   * The fault written as the {@code --fault} option takes it: {@code block-size=128}, {@code
   * inverted} or, for one path of several, {@code truck-mix:inverted}. The path ends at the first
   * colon before any equals sign. Behind the last {@code @} stands when it begins, in seconds of
   * the take or stream, and where it ends, when: {@code inverted@60}, {@code silent@60-70}.
   *
   * @param paths the names of the rig's paths
   * @throws FaultFormatException when there is no such path or fault, or its value is missing, no
   *     number or out of range, or it ends before it begins
   */
  public static PathFault parse(String text, Collection<String> paths) {
    int colon = colon(text);
    Optional<String> path =
        colon < 0 ? Optional.empty() : Optional.of(known(text.substring(0, colon), paths));
    int at = text.indexOf('@', colon + 1) < 0 ? text.length() : text.lastIndexOf('@');
    Fault fault = FaultFormat.parse(text.substring(colon + 1, at));
    if (fault instanceof RoutingFault routing) {
      known(routing.other(), paths);
    }
    return new PathFault(path, fault, when(text.substring(at)));
  }

  /** The fault; where it can be heard it counts its own time from when it begins. */
  Fault sinceItBegan() {
    return when.from() > 0 && fault instanceof SoundFault heard
        ? new Since(heard, when.from())
        : fault;
  }

  private static FaultTime when(String text) {
    try {
      return text.isEmpty() ? FaultTime.ALWAYS : FaultTime.parse(text.substring(1));
    } catch (IllegalArgumentException e) {
      throw new FaultFormatException(
          "when is '" + text + "'? " + e.getMessage(),
          "write @60 from second 60 on, @60-70 for ten seconds");
    }
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
