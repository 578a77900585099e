package dev.loopgauge.verify.verdict;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One verdict over everything that was heard.
 *
 * @param aspects how each aspect stands, each once
 */
public record OverallVerdict(List<AspectVerdict> aspects) {
  /**
   * Sorts the aspects into the order in which they are told.
   *
   * @throws IllegalArgumentException when an aspect stands twice
   */
  public OverallVerdict {
    aspects = aspects.stream().sorted(Comparator.comparing(AspectVerdict::aspect)).toList();
    long different = aspects.stream().map(AspectVerdict::aspect).distinct().count();
    if (different < aspects.size()) {
      throw new IllegalArgumentException("an aspect has one verdict, not two: " + aspects);
    }
  }

  /** The worst of what was judged. */
  public Judgement judgement() {
    return Judgement.worst(aspects.stream().map(AspectVerdict::judgement).toList());
  }

  /** The same with another verdict on one aspect. */
  OverallVerdict with(AspectVerdict other) {
    return new OverallVerdict(
        Stream.concat(aspects.stream().filter(a -> a.aspect() != other.aspect()), Stream.of(other))
            .toList());
  }

  /** How one aspect stands; empty where nothing was said of it. */
  public Optional<AspectVerdict> of(Aspect aspect) {
    return aspects.stream().filter(a -> a.aspect() == aspect).findFirst();
  }
}
