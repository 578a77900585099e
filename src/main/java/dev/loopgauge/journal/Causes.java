package dev.loopgauge.journal;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.UnknownPathException;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.verify.ChangeSearch;
import dev.loopgauge.verify.Explanation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Looks for what made a path later or earlier between two entries: first in what the journal holds,
 * then among all that the chain file allows.
 */
public final class Causes {
  private static final int MOST_LIKELY = 3;

  private final Entry first;
  private final Entry second;
  private final Latency later;
  private final double uncertaintySamples;

  private Causes(Entry first, Entry second, Latency later, double uncertaintySamples) {
    this.first = first;
    this.second = second;
    this.later = later;
    this.uncertaintySamples = uncertaintySamples;
  }

  /**
   * What may have made the difference, the surest first; empty when nothing is known.
   *
   * @param later how much later the second entry is
   * @param uncertaintySamples the expanded uncertainty of that, k = 2, in samples
   */
  public static List<Cause> of(
      Entry first, Entry second, Latency later, double uncertaintySamples) {
    return new Causes(first, second, later, uncertaintySamples).found();
  }

  /** What the journal has as different between two entries, whatever that makes. */
  public static List<Cause> recorded(Entry first, Entry second) {
    return RecordedChanges.between(first, second).stream()
        .map(change -> new Cause(change.kind(), change.text(), Cause.Standing.RECORDED))
        .toList();
  }

  private List<Cause> found() {
    List<Cause> explaining = new ArrayList<>();
    List<Cause> others = new ArrayList<>();
    for (RecordedChanges.Change change : RecordedChanges.between(first, second)) {
      boolean explains = explains(change.kind());
      Cause.Standing standing = explains ? Cause.Standing.EXPLAINS : Cause.Standing.RECORDED;
      (explains ? explaining : others).add(new Cause(change.kind(), change.text(), standing));
    }
    boolean open = explaining.isEmpty();
    explaining.addAll(others);
    if (open) {
      explaining.addAll(likely());
    }
    return List.copyOf(explaining);
  }

  /** Whether the chain, so changed, differs by just what was measured. */
  private boolean explains(String kind) {
    Optional<Double> before = loopSeconds(first, Optional.of(first), kind);
    Optional<Double> after =
        kind.equals(RecordedChanges.CHAIN_FILE)
            ? loopSeconds(second, Optional.empty(), kind)
            : loopSeconds(first, Optional.of(second), kind);
    return before.isPresent()
        && after.isPresent()
        && Math.abs((after.get() - before.get() - later.seconds()) * later.rate().hertz())
            <= ChangeSearch.tolerated(uncertaintySamples);
  }

  /** The loop by the chain file of one entry, with what is in question as another entry has it. */
  private Optional<Double> loopSeconds(Entry stated, Optional<Entry> found, String kind) {
    return chain(stated)
        .map(chain -> found.flatMap(Entry::card).map(card -> as(chain, card, kind)).orElse(chain))
        .map(chain -> ChainBudget.of(chain, chain.path(path())).loop().seconds());
  }

  private static Chain as(Chain chain, SoundCard card, String kind) {
    return switch (kind) {
      case RecordedChanges.BLOCK_SIZE -> chain.withBlockSize(card.blockSize());
      case RecordedChanges.SAMPLE_RATE -> chain.withSampleRate(card.rate());
      default -> chain;
    };
  }

  private List<Cause> likely() {
    List<Explanation> fitting =
        chain(first)
            .map(chain -> ChangeSearch.likely(chain, chain.path(path()), later, uncertaintySamples))
            .orElse(List.of());
    if (fitting.isEmpty()) {
      return wholeBlocks().stream().toList();
    }
    return fitting.stream()
        .filter(fit -> !fit.cause().equals(RecordedChanges.BLOCK_SIZE) || !keptBlockSize())
        .limit(MOST_LIKELY)
        .map(fit -> new Cause(fit.cause(), fit.text(), Cause.Standing.LIKELY))
        .toList();
  }

  /** Whether both entries ran at the block size that the chain file states for the host. */
  private boolean keptBlockSize() {
    Optional<Integer> stated = chain(first).map(Chain::blockSize);
    return Stream.of(first, second)
        .allMatch(entry -> entry.card().map(SoundCard::blockSize).equals(stated));
  }

  private Optional<Cause> wholeBlocks() {
    return second
        .card()
        .filter(card -> card.rate().equals(later.rate()))
        .flatMap(card -> wholeBlocks(card.blockSize()));
  }

  private Optional<Cause> wholeBlocks(int size) {
    long blocks = Math.round(later.samples() / size);
    if (blocks == 0
        || Math.abs(later.samples() - (double) blocks * size)
            > ChangeSearch.tolerated(uncertaintySamples)) {
      return Optional.empty();
    }
    String count = Math.abs(blocks) == 1 ? "one block" : Math.abs(blocks) + " blocks";
    String text =
        count
            + " of %d samples ".formatted(size)
            + (blocks > 0 ? "more; was a plug-in added?" : "less; was a plug-in taken out?");
    return Optional.of(new Cause("host-blocks", text, Cause.Standing.LIKELY));
  }

  private String path() {
    return first.heading().path().orElse("");
  }

  /**
   * The chain file of an entry; empty where there is none that can be read, or without the path.
   */
  private Optional<Chain> chain(Entry entry) {
    if (entry.chain().isEmpty()) {
      return Optional.empty();
    }
    try {
      Chain chain = ChainParser.parse(entry.chain().get().text(), entry.chain().get().name());
      chain.path(path());
      return Optional.of(chain);
    } catch (ChainFormatException | UnknownPathException e) {
      return Optional.empty();
    }
  }
}
