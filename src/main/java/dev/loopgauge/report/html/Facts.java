package dev.loopgauge.report.html;

import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.SoundCard;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.MeasurementRecord;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** What a reading was measured with, by the names that readers see. */
final class Facts {
  private static final int SHORT_DIGEST = 12;

  /** What a reading without a trusted number says nothing of. */
  static final Set<String> MEASURED = Set.of("Method", "Repeats", "Sample rate");

  private final Map<String, String> facts = new LinkedHashMap<>();

  private Facts() {}

  /** Of a reading. */
  static Map<String, String> of(ReadDocument reading) {
    Facts facts = new Facts();
    facts.put("Command", reading.command());
    reading.measured().flatMap(MeasurementDocument::measurement).ifPresent(facts::measured);
    reading.entry().ifPresent(facts::logged);
    return facts.facts;
  }

  private void put(String name, String value) {
    facts.put(name, value);
  }

  private void measured(MeasurementRecord measured) {
    measured.method().ifPresent(method -> put("Method", method));
    measured.repeats().ifPresent(repeats -> put("Repeats", String.valueOf(repeats)));
    put("Sample rate", measured.sampleRateHz() + " Hz");
  }

  private void logged(Entry entry) {
    put("Show", entry.heading().show());
    entry.card().ifPresent(this::card);
    entry.setup().forEach((key, value) -> put("Set: " + key, value));
    entry.note().ifPresent(note -> put("Note", note));
    entry.chain().ifPresent(chain -> put("Chain file", named(chain)));
    entry
        .capture()
        .ifPresent(kept -> put("Capture", kept.file() + ", SHA-256 " + brief(kept.digest())));
    put("Loopgauge", entry.toolVersion());
  }

  private void card(SoundCard card) {
    put("Back end", card.backend());
    put("Output", card.output());
    put("Input", card.input());
    put("Card's rate", Numbers.brief(card.rate().hertz(), 2) + " Hz");
    put("Card's block", card.blockSize() + " samples");
  }

  /** The name of a chain file and the digest of its text. */
  static String named(ChainText chain) {
    return chain.name() + ", SHA-256 " + brief(chain.digest());
  }

  private static String brief(String digest) {
    return digest.substring(0, Math.min(SHORT_DIGEST, digest.length()));
  }
}
