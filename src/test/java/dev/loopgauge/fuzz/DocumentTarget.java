package dev.loopgauge.fuzz;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.kind.Documents;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Documents that commands printed, read again and shown. */
record DocumentTarget() implements Target {
  private static final List<String> KINDS =
      List.of(
          "align",
          "budget",
          "channels",
          "error",
          "late",
          "measure",
          "pairs",
          "patch",
          "plan",
          "refused",
          "series",
          "soak",
          "track",
          "what-if");

  @Override
  public List<byte[]> seeds() throws IOException {
    List<byte[]> seeds = new ArrayList<>();
    for (String kind : KINDS) {
      String name = "/dev/loopgauge/report/kind/" + kind + ".json";
      try (InputStream in = DocumentTarget.class.getResourceAsStream(name)) {
        seeds.add(in.readAllBytes());
      }
    }
    return seeds;
  }

  @Override
  public void check(byte[] input) {
    Map<String, Object> keys;
    try {
      keys = Json.read(new String(input, StandardCharsets.UTF_8));
    } catch (IOException e) {
      return;
    }
    Optional<Document> document = Documents.read(keys);
    document.ifPresent(
        read -> {
          read.text();
          Json.write(read);
        });
  }
}
