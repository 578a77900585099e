package dev.loopgauge.report.html;

import static j2html.TagCreator.dd;
import static j2html.TagCreator.div;
import static j2html.TagCreator.dl;
import static j2html.TagCreator.dt;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.pre;
import static j2html.TagCreator.section;
import static j2html.TagCreator.text;

import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.SoundCard;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.MeasurementRecord;
import j2html.tags.DomContent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What was measured with what, so that another engineer can do it again. */
final class RepeatPart {
  private static final int SHORT_DIGEST = 12;

  private final Map<String, ChainText> chains = new LinkedHashMap<>();
  private final List<DomContent> content = new ArrayList<>();

  /** The part of all readings. */
  RepeatPart(List<ReadDocument> readings) {
    content.add(h2("How to repeat it").withId("repeat"));
    readings.stream().filter(RepeatPart::isToRepeat).forEach(this::reading);
    documents(readings.stream().filter(reading -> !isToRepeat(reading)).toList());
    chains.forEach(this::chain);
  }

  /** The section. */
  DomContent html() {
    return section(each(content, part -> part)).attr("aria-labelledby", "repeat");
  }

  private static boolean isToRepeat(ReadDocument reading) {
    return reading.entry().isPresent() || reading.delay().isPresent();
  }

  private void documents(List<ReadDocument> others) {
    if (!others.isEmpty()) {
      Grid grid = new Grid("Other documents", "From", "Command", "Outcome").words(3);
      others.forEach(other -> grid.row(other.source(), other.command(), other.outcome()));
      content.add(grid.html());
    }
  }

  private void reading(ReadDocument reading) {
    Map<String, String> lines = new LinkedHashMap<>();
    reading.entry().ifPresent(entry -> when(lines, entry));
    lines.put("Command", reading.command());
    reading
        .measured()
        .flatMap(MeasurementDocument::measurement)
        .ifPresent(measured -> method(lines, measured));
    reading.entry().ifPresent(entry -> setup(lines, entry));
    lines.put("Document from", reading.source());
    String when = reading.when().map(part -> ", " + part.label()).orElse("");
    content.add(h3(Escaping.brief(reading.path()), text(when)));
    content.add(dl(each(lines.entrySet(), RepeatPart::line)).withClass("facts"));
  }

  private static void when(Map<String, String> lines, Entry entry) {
    lines.put("Measured", Moments.told(entry.heading().at()));
    lines.put("Show", entry.heading().show());
    entry.note().ifPresent(note -> lines.put("Note", note));
  }

  private static void method(Map<String, String> lines, MeasurementRecord measured) {
    measured.method().ifPresent(method -> lines.put("Method", method));
    measured.repeats().ifPresent(repeats -> lines.put("Repeats", String.valueOf(repeats)));
    lines.put("Sample rate", measured.sampleRateHz() + " Hz");
    put(lines, "Level of the return", measured.levelDb(), " dB");
    put(lines, "Above the noise", measured.signalToNoiseDb(), " dB");
    put(lines, "Clock drift", measured.clockDriftPpm(), " ppm");
    measured.polarity().ifPresent(polarity -> lines.put("Polarity", polarity));
  }

  private static void put(
      Map<String, String> lines, String name, Optional<BigDecimal> value, String unit) {
    value.ifPresent(known -> lines.put(name, Numbers.brief(known.doubleValue(), 2) + unit));
  }

  private void setup(Map<String, String> lines, Entry entry) {
    entry.card().ifPresent(card -> card(lines, card));
    entry.setup().forEach((key, value) -> lines.put("Set: " + key, value));
    entry.chain().ifPresent(chain -> lines.put("Chain file", named(chain)));
    entry
        .capture()
        .ifPresent(kept -> lines.put("Capture", kept.file() + ", SHA-256 " + brief(kept.digest())));
    lines.put("Loopgauge", entry.toolVersion());
  }

  private static void card(Map<String, String> lines, SoundCard card) {
    lines.put("Back end", card.backend());
    lines.put("Output", card.output());
    lines.put("Input", card.input());
    lines.put("Card's rate", Numbers.brief(card.rate().hertz(), 2) + " Hz");
    lines.put("Card's block", card.blockSize() + " samples");
  }

  private String named(ChainText chain) {
    String digest = brief(chain.digest());
    chains.putIfAbsent(digest, chain);
    return chain.name() + ", SHA-256 " + digest;
  }

  private static String brief(String digest) {
    return digest.substring(0, Math.min(SHORT_DIGEST, digest.length()));
  }

  private void chain(String digest, ChainText chain) {
    content.add(h3(text("Chain file "), Escaping.brief(chain.name()), text(", SHA-256 " + digest)));
    content.add(pre(chain.text()));
  }

  private static DomContent line(Map.Entry<String, String> line) {
    return div(dt(Escaping.brief(line.getKey())), dd(Escaping.isolated(line.getValue())));
  }
}
