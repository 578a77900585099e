package dev.loopgauge.job.kept;

import dev.loopgauge.job.ResultFile;
import dev.loopgauge.job.kept.NewEntries.Result;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.form.Unbinder;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.kind.Documents;
import dev.loopgauge.report.kind.KeptFacts;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.KeptRecord;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * The results in a document that was printed: one, or one for each channel or path. A document of a
 * command that this version doesn't know is one result.
 *
 * @param journal the name of the journal that they go to
 */
record PrintedResults(ResultFile printed, String journal) {
  /** What is kept of a document that can't be read as one of its command. */
  private record Told(
      Optional<VerdictRecord> verdict, Optional<Compared> comparison, Optional<KeptRecord> kept) {
    private record Compared(Optional<String> path) {}

    private Optional<String> path() {
      return comparison.flatMap(Compared::path);
    }
  }

  /**
   * All of them.
   *
   * @param said the path's name, where the user named one
   */
  List<Result> all(Optional<String> said) {
    Map<String, Object> values = printed.values();
    if (!(values.get("command") instanceof String) || !(values.get("outcome") instanceof String)) {
      throw printed.lacks("a document with a command and an outcome", "give what --json printed");
    }
    if (values.get("outcome").equals(ErrorDocument.OUTCOME)) {
      throw printed.lacks("a result", "it tells of a failure: measure again");
    }
    if (values.get("paths") instanceof List<?> paths && values.get("command").equals("round")) {
      return ofRound(paths);
    }
    Optional<Document> read = Documents.read(values);
    if (read.filter(ChannelsDocument.class::isInstance).isPresent()) {
      return new KeptParts(read.get(), said).results(journal);
    }
    return List.of(result(said, values));
  }

  private List<Result> ofRound(List<?> paths) {
    List<Result> results = new ArrayList<>();
    for (Object path : paths) {
      if (path instanceof Map<?, ?> map && map.get("document") instanceof Map<?, ?> document) {
        results.add(result(Optional.of(String.valueOf(map.get("path"))), document));
      }
    }
    return results;
  }

  private Result result(Optional<String> said, Map<?, ?> document) {
    Told told = Unbinder.read(Told.class, document).orElseThrow();
    UUID id =
        told.kept().flatMap(KeptRecord::id).flatMap(PrintedResults::id).orElseGet(UUID::randomUUID);
    Map<Object, Object> kept = new LinkedHashMap<>(document);
    Map<String, Object> as = new LinkedHashMap<>();
    as.put("id", id.toString());
    as.put("journal", journal);
    kept.put("kept", as);
    KeptFacts facts =
        Documents.read(document).map(KeptFacts::of).orElseGet(() -> bare(document, told));
    return new Result(id, said.or(told::path), Json.line(kept), facts);
  }

  private static KeptFacts bare(Map<?, ?> document, Told told) {
    return new KeptFacts(
        Documents.outcome(document),
        told.verdict().flatMap(VerdictRecord::standing),
        Optional.empty());
  }

  private static Optional<UUID> id(String text) {
    try {
      return Optional.of(UUID.fromString(text)).filter(id -> id.toString().equals(text));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }
}
