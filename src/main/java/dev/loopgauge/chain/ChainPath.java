package dev.loopgauge.chain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The way from a source to one listener, by the names of its stages. A stage that is passed twice
 * stands twice.
 *
 * @param name its name in the chain file
 * @param listener who hears it
 * @param stages its stages from source to listener, at least one
 * @param loop the stages that a patched measurement runs through, where they are listed
 * @param picture the picture seen with it
 * @param instrument what is played on it
 * @param input the source it carries: paths of one input take the same sound to several places
 * @param direct how long the same sound takes straight to this listener, through the air
 * @param returnsToTalker whether it takes people their own voice back
 * @param patch where it is plugged in to be measured
 * @param loudspeaker the loudspeaker at its end, where the air comes from positions
 * @param expected what its return should be like
 */
public record ChainPath(
    String name,
    Listener listener,
    List<String> stages,
    Optional<List<String>> loop,
    Optional<String> picture,
    Optional<Instrument> instrument,
    String input,
    Optional<Delay> direct,
    boolean returnsToTalker,
    Optional<Patch> patch,
    Optional<Loudspeaker> loudspeaker,
    Expectation expected) {
  /**
   * Copies the lists.
   *
   * @throws IllegalArgumentException when there are no stages, the loop has a stage that the path
   *     has not, or the direct sound does not go through air
   */
  public ChainPath {
    stages = List.copyOf(stages);
    loop = loop.map(List::copyOf);
    if (stages.isEmpty()) {
      throw new IllegalArgumentException("a path must have a stage; '" + name + "' has none");
    }
    for (String stage : loop.orElse(List.of())) {
      if (!stages.contains(stage)) {
        throw new IllegalArgumentException(
            "a loop must be part of its path; '" + name + "' has no stage '" + stage + "'");
      }
    }
    if (direct.isPresent() && !direct.get().isAir()) {
      throw new IllegalArgumentException(
          "direct sound must go through air; '" + name + "' has " + direct.get());
    }
  }

  /** The path with another stage in the place of the first pass of one; the same without it. */
  ChainPath replacing(String stage, String other) {
    return edited(
        names -> {
          int first = names.indexOf(stage);
          if (first >= 0) {
            names.set(first, other);
          }
        });
  }

  /** The path with another stage after the first pass of one; the same without it. */
  ChainPath repeating(String stage, String other) {
    return edited(
        names -> {
          int first = names.indexOf(stage);
          if (first >= 0) {
            names.add(first + 1, other);
          }
        });
  }

  /** The path with another stage at its end if it hasn't one; the same with it. */
  ChainPath ending(String unless, String other) {
    return edited(
        names -> {
          if (!names.contains(unless)) {
            names.add(other);
          }
        });
  }

  private ChainPath edited(Consumer<List<String>> edit) {
    return new ChainPath(
        name,
        listener,
        edited(stages, edit),
        loop.map(names -> edited(names, edit)),
        picture,
        instrument,
        input,
        direct,
        returnsToTalker,
        patch,
        loudspeaker,
        expected);
  }

  private static List<String> edited(List<String> names, Consumer<List<String>> edit) {
    List<String> changed = new ArrayList<>(names);
    edit.accept(changed);
    return changed;
  }
}
