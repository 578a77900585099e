package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToIntFunction;
import java.util.function.ToLongFunction;

/** The footprints of a process over time. */
final class Footprints {
  private static final int KIB = 1_024;

  /**
   * A take of these tests records 0.4 MiB: one that stayed each time would be 40 in a slice of 100.
   */
  private static final long GROWTH_KB = 24 * KIB;

  /** A pool may hold one thread more, and a look at a folder one file. */
  private static final int SPARE = 2;

  private final int warmUp;
  private final List<Footprint> seen = new ArrayList<>();

  /**
   * Of a process that is still new.
   *
   * @param warmUp how many footprints it takes until all is loaded and compiled
   */
  Footprints(int warmUp) {
    this.warmUp = warmUp;
  }

  void add(Footprint footprint) {
    seen.add(footprint);
    System.out.println(footprint);
  }

  /** Fails where something grew once it was warm. */
  void assertFlat() {
    Footprint warm = seen.get(Math.min(warmUp, seen.size() - 1));
    Footprint last = seen.get(seen.size() - 1);
    assertTrue(last.memoryKb() - warm.memoryKb() <= GROWTH_KB, () -> "memory: " + seen);
    assertTrue(last.threads() - warm.threads() <= SPARE, () -> "threads: " + seen);
    assertTrue(last.handles() - warm.handles() <= SPARE, () -> "handles: " + seen);
    assertTrue(last.ports() == warm.ports(), () -> "ports: " + seen);
  }

  /** Cells of a table: memory in MiB, threads, handles and ports, each at first, last and most. */
  String cells() {
    return String.join(
        "\t",
        mebibytes(),
        counts(Footprint::threads),
        counts(Footprint::handles),
        counts(Footprint::ports));
  }

  private String mebibytes() {
    ToLongFunction<Footprint> kb = Footprint::memoryKb;
    return String.format(
        Locale.ROOT,
        "%d, %d, %d",
        kb.applyAsLong(seen.get(0)) / KIB,
        kb.applyAsLong(seen.get(seen.size() - 1)) / KIB,
        seen.stream().mapToLong(kb).max().orElseThrow() / KIB);
  }

  private String counts(ToIntFunction<Footprint> count) {
    return String.format(
        Locale.ROOT,
        "%d, %d, %d",
        count.applyAsInt(seen.get(0)),
        count.applyAsInt(seen.get(seen.size() - 1)),
        seen.stream().mapToInt(count).max().orElseThrow());
  }
}
