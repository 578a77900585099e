package dev.loopgauge.verify.verdict;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
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
    Map<Aspect, AspectVerdict> inOrder = new EnumMap<>(Aspect.class);
    for (AspectVerdict one : aspects) {
      if (inOrder.put(one.aspect(), one) != null) {
        throw new IllegalArgumentException("an aspect has one verdict, not two: " + aspects);
      }
    }
    aspects = List.copyOf(inOrder.values());
  }

  /** The worst of what was judged. */
  public Judgement judgement() {
    List<Judgement> judgements = new ArrayList<>();
    for (AspectVerdict one : aspects) {
      judgements.add(one.judgement());
    }
    return Judgement.worst(judgements);
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
