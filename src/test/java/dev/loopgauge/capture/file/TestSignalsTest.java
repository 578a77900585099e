package dev.loopgauge.capture.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The shipped test signals are what their table says, made again from it. */
class TestSignalsTest {
  private static final Path SHIPPED = Path.of("test-signals");
  private static final long MOST_BYTES = 1_000_000;

  @TempDir Path folder;

  record Row(String file, PlayedStimulus stimulus, SampleRate rate, int samples, String sha256) {
    static Row parse(String line) {
      String[] cells = line.replaceAll("^\\| *| *\\|$", "").split(" *\\| *", -1);
      assertEquals("24", cells[5], line);
      StimulusKind kind = StimulusKind.valueOf(cells[1].toUpperCase(Locale.ROOT));
      return new Row(
          cells[0],
          new PlayedStimulus(kind, Double.parseDouble(cells[2]), Double.parseDouble(cells[3])),
          new SampleRate(Integer.parseInt(cells[4])),
          Integer.parseInt(cells[6]),
          cells[7]);
    }
  }

  static List<Row> table() throws IOException {
    return Files.readAllLines(SHIPPED.resolve("README.md")).stream()
        .filter(line -> line.contains(".wav |"))
        .map(Row::parse)
        .toList();
  }

  @ParameterizedTest
  @MethodSource("table")
  void areMadeAgainByteForByte(Row row) throws Exception {
    Path made = folder.resolve(row.file);
    Signal signal = row.stimulus.render(row.rate);

    WavWriter.write(made, List.of(signal), WavEncoding.PCM_24);

    byte[] shipped = Files.readAllBytes(SHIPPED.resolve(row.file));
    assertEquals(row.samples, signal.length());
    assertArrayEquals(shipped, Files.readAllBytes(made));
    byte[] digest = MessageDigest.getInstance("SHA-256").digest(shipped);
    assertEquals(row.sha256, HexFormat.of().formatHex(digest));
  }

  @Test
  void areOfEveryKindAndSmallAndAllInTheTable() throws Exception {
    Set<String> expected = table().stream().map(Row::file).collect(Collectors.toSet());
    Set<StimulusKind> kinds =
        table().stream().map(row -> row.stimulus.kind()).collect(Collectors.toSet());
    expected.add("README.md");
    Set<String> found = new TreeSet<>();
    long bytes = 0;
    try (Stream<Path> files = Files.list(SHIPPED)) {
      for (Path file : files.toList()) {
        found.add(file.getFileName().toString());
        bytes += Files.size(file);
      }
    }

    assertEquals(new TreeSet<>(expected), found);
    assertEquals(Set.of(StimulusKind.values()), kinds);
    assertTrue(bytes < MOST_BYTES, bytes + " bytes");
  }
}
