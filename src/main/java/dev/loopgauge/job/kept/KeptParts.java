package dev.loopgauge.job.kept;

import dev.loopgauge.job.kept.NewEntries.Result;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.kind.KeptFacts;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.Keepable;
import dev.loopgauge.report.measured.KeptRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * The parts of a result that are an entry each: several channels are one each, and a channel's path
 * says which it is.
 *
 * @param document the result
 * @param path the path's name, where it has one
 */
record KeptParts(Document document, Optional<String> path) {
  /** The entries to be, each with an id of its own and a document that tells of it. */
  List<Result> results(String journal) {
    List<Result> results = new ArrayList<>();
    if (document instanceof ChannelsDocument channels) {
      channels
          .channels()
          .forEach(
              c -> results.add(result(Optional.of(name(c.channel())), channels.alone(c), journal)));
    } else {
      results.add(result(path, document, journal));
    }
    return results;
  }

  private String name(int channel) {
    return path.map(of -> of + ", return " + channel).orElse("return " + channel);
  }

  private static Result result(Optional<String> path, Document part, String journal) {
    UUID id = UUID.randomUUID();
    KeptRecord kept = KeptRecord.as(id.toString(), journal);
    Document told = part instanceof Keepable keepable ? keepable.withKept(kept) : part;
    return new Result(id, path, Json.write(told), KeptFacts.of(part));
  }

  /** The result, which tells of its entries. */
  Document keptAs(List<Result> results, String journal) {
    return told(results.stream().map(r -> KeptRecord.as(r.id().toString(), journal)).toList());
  }

  /** The result, which tells why it was not kept. */
  Document notKept(String why) {
    return told(List.of(KeptRecord.not(why)));
  }

  private Document told(List<KeptRecord> kept) {
    if (document instanceof ChannelsDocument channels) {
      return channels.withKept(kept);
    }
    return document instanceof Keepable keepable ? keepable.withKept(kept.get(0)) : document;
  }
}
