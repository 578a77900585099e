package dev.loopgauge.report.logged;

import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.SoundCard;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Fields;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * One entry of the journal, all of it.
 *
 * @param entry the entry
 * @param measured its document as it was printed, read
 * @param correctedBy the entry that it no longer stands beside, where there is one
 */
public record EntryDocument(Entry entry, Map<String, Object> measured, Optional<UUID> correctedBy)
    implements Document {
  @Override
  public String text() {
    Heading heading = entry.heading();
    Sheet sheet = new Sheet();
    sheet.line(
        "%s, %s, %s: %s"
            .formatted(
                OneLine.line(heading.show()),
                heading.when().label(),
                OneLine.line(heading.path().orElse("no path named")),
                heading.outcome()));
    sheet.row(
        "delay",
        heading
            .delay()
            .map(logged -> Logs.samples(logged) + " samples, " + Logs.ms(logged) + " ms")
            .orElse(Logs.NO_NUMBER));
    findings(sheet);
    sheet.row("measured at", Logs.exact(heading.at()));
    entry.note().ifPresent(note -> sheet.row("note", OneLine.line(note)));
    entry.setup().forEach((name, set) -> sheet.row("set", OneLine.line(name + " = " + set)));
    entry.card().ifPresent(card -> sheet.row("with", card(card)));
    entry.chain().ifPresent(chain -> sheet.row("chain file", chain(chain)));
    entry.capture().ifPresent(kept -> sheet.row("recording", OneLine.line(kept.file())));
    heading.corrects().ifPresent(old -> sheet.row("corrects", "entry " + Heading.shortened(old)));
    correctedBy.ifPresent(by -> sheet.row("corrected", "by entry " + Heading.shortened(by)));
    sheet.row("version", OneLine.line(entry.toolVersion()));
    sheet.row("id", heading.id().toString());
    return sheet.toString();
  }

  private void findings(Sheet sheet) {
    for (Fields finding : new Fields(measured).parts("findings")) {
      finding.text("text").ifPresent(text -> sheet.row("finding", OneLine.line(text)));
      finding.text("hint").ifPresent(hint -> sheet.row("  try", OneLine.line(hint)));
    }
  }

  private static String card(SoundCard card) {
    return OneLine.line(
        "%s, %s to %s, %d Hz, block %d"
            .formatted(
                card.backend(),
                card.output(),
                card.input(),
                card.rate().hertz(),
                card.blockSize()));
  }

  private static String chain(ChainText chain) {
    return OneLine.line(chain.name()) + ", SHA-256 " + chain.digest();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("journal show", "shown");
    Map<String, Object> shown = Logs.json(entry.heading());
    shown.put("correctedBy", correctedBy.map(UUID::toString).orElse(null));
    shown.put("note", entry.note().orElse(null));
    shown.put("setup", entry.setup());
    shown.put("chain", entry.chain().map(EntryDocument::chainJson).orElse(null));
    shown.put("card", entry.card().map(EntryDocument::cardJson).orElse(null));
    shown.put("capture", entry.capture().map(KeptCapture::file).orElse(null));
    shown.put("toolVersion", entry.toolVersion());
    json.put("entry", shown);
    json.put("document", measured);
    return json;
  }

  private static Map<String, Object> chainJson(ChainText chain) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", chain.name());
    json.put("sha256", chain.digest());
    json.put("text", chain.text());
    return json;
  }

  private static Map<String, Object> cardJson(SoundCard card) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("backend", card.backend());
    json.put("output", card.output());
    json.put("input", card.input());
    json.put("sampleRateHz", card.rate().hertz());
    json.put("blockSizeSamples", card.blockSize());
    return json;
  }
}
