package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavEncoding;
import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SignalCommandTest {
  @TempDir private Path folder;

  private String file(String name) {
    return folder.resolve(name).toString();
  }

  @Test
  void writesASweepThatNobodyHadToDescribe() throws AudioFileException {
    String file = file("sweep.wav");
    Run run = Run.of("signal", "-o", file);
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(run.out().startsWith("Written: "), run.out());
    try (WavFile wav = WavFile.open(Path.of(file))) {
      assertEquals(new SampleRate(48_000), wav.rate());
      assertEquals(WavEncoding.PCM_24, wav.encoding());
      assertEquals(48_000, wav.frames());
      double peak = wav.channel(1).peak();
      assertEquals(0.1, peak, 0.001, "-20 dBFS is a tenth");
    }
  }

  @ParameterizedTest
  @CsvSource({"click, 0.1, 44100", "sweep, 0.5, 96000", "mls, 0.7, 48000"})
  void writesEachKindAsItIsPlayed(String kind, double seconds, int rate) throws AudioFileException {
    String file = file(kind + ".wav");
    Run run =
        Run.of(
            "signal",
            "--stimulus=" + kind,
            "--seconds=" + seconds,
            "--level",
            "-12",
            "--sample-rate=" + rate,
            "--bits=32",
            "--json",
            "--out=" + file);
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertEquals(kind, run.json().get("kind"));
    assertEquals(rate, run.json().get("sampleRateHz"));
    double[] expected =
        new PlayedStimulus(new Converters.Kind().convert(kind), seconds, -12)
            .render(new SampleRate(rate))
            .toArray();
    try (WavFile wav = WavFile.open(Path.of(file))) {
      assertArrayEquals(expected, wav.channel(1).toArray(), 1e-7);
    }
    assertEquals(expected.length, run.json().get("samples"));
  }

  @Test
  void anExistingFileIsLeftAlone() throws IOException {
    Path file = Files.writeString(folder.resolve("mine.wav"), "precious");
    Run run = Run.of("signal", "-o", file.toString());
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().contains("mine.wav"), run.err());
    assertEquals("precious", Files.readString(file));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--stimulus=hum",
        "--seconds=0",
        "--seconds=1e9",
        "--level=1",
        "--bits=20",
        "--sample-rate=1"
      })
  void whatCannotBeIsRefusedBeforeAnythingIsWritten(String wrong) {
    Run run = Run.of("signal", wrong, "-o", file("x.wav"));
    assertEquals(ExitCode.USAGE, run.exitCode(), run.out());
    assertEquals("", run.out());
    assertEquals(2, run.err().lines().count(), run.err());
    assertFalse(Files.exists(folder.resolve("x.wav")));
  }

  @Test
  void aMissingFileNameIsSaid() {
    Run run = Run.of("signal", "--json");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.error("text").toString().contains("--out"));
    assertEquals("signal", run.json().get("command"));
  }

  @Test
  void kindsAreNamedInTheRefusal() {
    for (StimulusKind kind : StimulusKind.values()) {
      assertTrue(
          Run.of("signal", "--stimulus=hum", "-o", file("x.wav")).err().contains(kind.label()));
    }
  }
}
