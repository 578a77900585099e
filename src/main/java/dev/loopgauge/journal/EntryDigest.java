package dev.loopgauge.journal;

import dev.loopgauge.verify.verdict.Judgement;
import java.util.Optional;
import java.util.function.Function;

/**
 * A fingerprint of all that an entry holds, to be stored beside it: an entry of which a part was
 * lost or changed no longer matches it. Stores keep it for ever, so the order and form of the parts
 * must not change. What later versions keep comes last, and adds nothing where it is missing, so
 * that the digests of older entries stay true.
 */
public final class EntryDigest {
  private final StringBuilder parts = new StringBuilder();

  private EntryDigest(Heading heading) {
    heading(heading);
    heading.standing().map(Judgement::label).ifPresent(this::add);
  }

  private EntryDigest(Entry entry, Function<ChainText, String> ofChain) {
    heading(entry.heading());
    add(entry.note());
    entry.setup().forEach((name, value) -> add(name).add(value));
    add(entry.document());
    add(entry.chain().map(ChainText::name));
    add(entry.chain().map(ofChain));
    add(entry.card().map(EntryDigest::card));
    add(entry.capture().map(KeptCapture::file));
    add(entry.capture().map(KeptCapture::digest));
    add(entry.toolVersion());
    entry.heading().standing().map(Judgement::label).ifPresent(this::add);
  }

  private void heading(Heading heading) {
    add(heading.id().toString());
    add(heading.at().toInstant().toEpochMilli() + " " + heading.zone());
    add(heading.show());
    add(heading.when().label());
    add(heading.path());
    add(heading.outcome());
    add(
        heading
            .delay()
            .map(logged -> logged.delay().samples() + " " + logged.uncertaintySamples()));
    add(heading.delay().map(logged -> "" + logged.delay().rate().hertz()));
    add(heading.corrects().map(Object::toString));
  }

  private static String card(SoundCard card) {
    return new EntryDigest(card).parts.toString();
  }

  private EntryDigest(SoundCard card) {
    add(card.backend());
    add(card.output());
    add(card.input());
    add(card.rate().hertz() + " " + card.blockSize());
  }

  private EntryDigest add(String part) {
    return add(Optional.of(part));
  }

  /** Each part with its length before it, so that no two lists of parts read alike. */
  private EntryDigest add(Optional<String> part) {
    String text = part.orElse("");
    parts.append(part.isPresent() ? '+' : '-').append(text.length()).append(':').append(text);
    return this;
  }

  /** SHA-256 of the heading alone, so that lists can be checked without the rest. */
  public static String of(Heading heading) {
    return Sha256.of(StoredText.stored(new EntryDigest(heading).parts.toString()));
  }

  /** SHA-256 of it all, 64 hexadecimal digits. */
  public static String of(Entry entry) {
    return of(entry, ChainText::digest);
  }

  /** Whether a digest is that of an entry, as it is or as it was. */
  public static boolean matches(String digest, Entry entry) {
    return digest.equals(of(entry)) || digest.equals(of(entry, ChainText::olderDigest));
  }

  private static String of(Entry entry, Function<ChainText, String> ofChain) {
    return Sha256.of(StoredText.stored(new EntryDigest(entry, ofChain).parts.toString()));
  }
}
