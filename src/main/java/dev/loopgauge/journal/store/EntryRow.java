package dev.loopgauge.journal.store;

import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.EntryDigest;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Keeping;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.SoundCard;
import dev.loopgauge.journal.StoredText;
import dev.loopgauge.journal.When;
import dev.loopgauge.journal.Zones;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.verdict.Judgement;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.Optional;
import java.util.UUID;

/** Entries as rows of the tables. */
final class EntryRow {
  /** The columns of a heading, in the order in which it is written. */
  static final String HEADING =
      "id, at_ms, zone, show_name, day_part, path, outcome, delay_samples, rate_hz,"
          + " uncertainty_samples, corrects, standing, offset_s, heading_digest";

  /** The columns of where it was kept first, behind those of the heading. */
  static final String KEEPING = "order_ms, origin, number, link";

  /** The columns of the rest, in the order in which they are written. */
  static final String DETAIL =
      "entry_id, note, setup, document, chain_name, chain_digest, backend, output, input,"
          + " card_rate_hz, block_size, capture_file, capture_digest, tool_version, digest";

  private EntryRow() {}

  static void writeHeading(PreparedStatement insert, Heading heading) throws SQLException {
    insert.setString(1, heading.id().toString());
    insert.setLong(2, heading.at().toInstant().toEpochMilli());
    insert.setString(3, heading.zone());
    insert.setString(4, StoredText.stored(heading.show()));
    insert.setString(5, heading.when().label());
    insert.setString(6, heading.path().map(StoredText::stored).orElse(null));
    insert.setString(7, StoredText.stored(heading.outcome()));
    insert.setObject(8, heading.delay().map(logged -> logged.delay().samples()).orElse(null));
    insert.setObject(9, heading.delay().map(logged -> logged.delay().rate().hertz()).orElse(null));
    insert.setObject(10, heading.delay().map(LoggedDelay::uncertaintySamples).orElse(null));
    insert.setString(11, heading.corrects().map(UUID::toString).orElse(null));
    insert.setString(12, heading.standing().map(Judgement::label).orElse(null));
    insert.setInt(13, heading.at().getOffset().getTotalSeconds());
    insert.setString(14, EntryDigest.of(heading));
  }

  static void writeKeeping(PreparedStatement insert, Heading heading, Optional<Keeping> keeping)
      throws SQLException {
    long atMs = heading.at().toInstant().toEpochMilli();
    insert.setLong(15, keeping.map(Keeping::orderMs).orElse(atMs));
    insert.setString(16, keeping.map(Keeping::origin).orElse(null));
    insert.setLong(17, keeping.map(Keeping::number).orElse(0L));
    insert.setString(18, keeping.map(Keeping::link).orElse(null));
  }

  static void writeDetail(PreparedStatement insert, Entry entry) throws SQLException {
    insert.setString(1, entry.heading().id().toString());
    insert.setString(2, entry.note().map(StoredText::stored).orElse(null));
    insert.setString(3, StoredText.stored(entry.setup()));
    insert.setString(4, StoredText.stored(entry.document()));
    insert.setString(5, entry.chain().map(ChainText::name).map(StoredText::stored).orElse(null));
    insert.setString(6, entry.chain().map(ChainText::digest).orElse(null));
    insert.setString(7, entry.card().map(SoundCard::backend).map(StoredText::stored).orElse(null));
    insert.setString(8, entry.card().map(SoundCard::output).map(StoredText::stored).orElse(null));
    insert.setString(9, entry.card().map(SoundCard::input).map(StoredText::stored).orElse(null));
    insert.setObject(10, entry.card().map(card -> card.rate().hertz()).orElse(null));
    insert.setObject(11, entry.card().map(SoundCard::blockSize).orElse(null));
    insert.setString(
        12, entry.capture().map(KeptCapture::file).map(StoredText::stored).orElse(null));
    insert.setString(
        13, entry.capture().map(KeptCapture::digest).map(StoredText::stored).orElse(null));
    insert.setString(14, StoredText.stored(entry.toolVersion()));
    insert.setString(15, EntryDigest.of(entry));
  }

  static Heading readHeading(ResultSet row) throws SQLException {
    String zone = row.getString("zone");
    Optional<ZoneId> known = Zones.known(zone);
    ZoneId there =
        known.isPresent() ? known.get() : ZoneOffset.ofTotalSeconds(row.getInt("offset_s"));
    return new Heading(
        UUID.fromString(row.getString("id")),
        ZonedDateTime.ofInstant(Instant.ofEpochMilli(row.getLong("at_ms")), there),
        StoredText.read(row.getString("show_name")),
        When.labelled(row.getString("day_part")).orElseThrow(),
        text(row, "path"),
        StoredText.read(row.getString("outcome")),
        text(row, "standing").map(label -> Judgement.labelled(label).orElseThrow()),
        delay(row),
        text(row, "corrects").map(UUID::fromString),
        known.isPresent() ? Optional.empty() : Optional.of(zone));
  }

  static Optional<Keeping> readKeeping(ResultSet row) throws SQLException {
    String origin = row.getString("origin");
    return origin == null
        ? Optional.empty()
        : Optional.of(
            new Keeping(
                origin, row.getLong("number"), row.getString("link"), row.getLong("order_ms")));
  }

  private static Optional<LoggedDelay> delay(ResultSet row) throws SQLException {
    double samples = row.getDouble("delay_samples");
    if (row.wasNull()) {
      return Optional.empty();
    }
    return Optional.of(
        new LoggedDelay(
            new Latency(samples, new SampleRate(row.getInt("rate_hz"))),
            row.getDouble("uncertainty_samples")));
  }

  static Entry readEntry(ResultSet row) throws SQLException {
    return new Entry(
        readHeading(row),
        text(row, "note"),
        StoredText.readSetup(row.getString("setup")),
        StoredText.read(row.getString("document")),
        chain(row),
        card(row),
        capture(row),
        StoredText.read(row.getString("tool_version")));
  }

  private static Optional<ChainText> chain(ResultSet row) throws SQLException {
    Optional<String> name = text(row, "chain_name");
    Optional<String> content = text(row, "content");
    return name.flatMap(n -> content.map(c -> new ChainText(n, c)));
  }

  private static Optional<SoundCard> card(ResultSet row) throws SQLException {
    Optional<String> backend = text(row, "backend");
    if (backend.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new SoundCard(
            backend.get(),
            StoredText.read(row.getString("output")),
            StoredText.read(row.getString("input")),
            new SampleRate(row.getInt("card_rate_hz")),
            row.getInt("block_size")));
  }

  private static Optional<KeptCapture> capture(ResultSet row) throws SQLException {
    Optional<String> file = text(row, "capture_file");
    Optional<String> digest = text(row, "capture_digest");
    return file.flatMap(f -> digest.map(d -> new KeptCapture(f, d)));
  }

  private static Optional<String> text(ResultSet row, String column) throws SQLException {
    return Optional.ofNullable(row.getString(column)).map(StoredText::read);
  }
}
