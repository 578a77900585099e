package dev.loopgauge.report.form;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ErrorDocumentTest {
  private final ErrorDocument document =
      ErrorDocument.of("budget", "unusable-file", "no file \"größe.yaml\"", "check the name");

  @Test
  void tellsAPersonWhatAndWhatToTry() {
    assertEquals("no file \"größe.yaml\"\n  try  check the name\n", document.text());
  }

  @Test
  void tellsAScriptTheSame() {
    assertEquals(
        "{\"schema\":1,\"command\":\"budget\",\"outcome\":\"error\",\"error\":{"
            + "\"code\":\"unusable-file\",\"text\":\"no file \\\"größe.yaml\\\"\","
            + "\"hint\":\"check the name\"}}",
        Json.write(document).replaceAll("\\R *", "").replace("\" : ", "\":"));
  }
}
