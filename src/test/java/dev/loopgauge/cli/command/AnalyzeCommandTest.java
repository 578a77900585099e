package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.cli.Recorded;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AnalyzeCommandTest {
  private static final String CHAIN =
      """
      sample-rate: 48000
      block-size: 64
      stages:
        box: { samples: 398, tolerance-samples: 1 }
        host: { blocks: 2 }
      paths:
        singer: { listener: house, stages: [box, host] }
      """;

  @TempDir private Path folder;
  private String sent = "";
  private String returned = "";
  private String chain = "";

  @BeforeEach
  void writeFiles() throws AudioFileException, IOException {
    sent = Recorded.write(folder.resolve("sent.wav"), Recorded.sweep(0, 1, 1)).toString();
    returned = Recorded.write(folder.resolve("ret.wav"), Recorded.sweep(526, 0.5, 2)).toString();
    chain = Files.writeString(folder.resolve("chain.yaml"), CHAIN).toString();
  }

  private static Map<?, ?> section(Run run, String key) {
    return (Map<?, ?>) run.json().get(key);
  }

  private static double delay(Run run) {
    return ((Number) section(run, "measurement").get("delaySamples")).doubleValue();
  }

  @Test
  void findsHowMuchLaterAnotherFileIs() {
    Run run = Run.of("analyze", "--reference", sent, "--return", returned, "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertEquals("", run.err());
    assertEquals("measured", run.json().get("outcome"));
    assertEquals(526, delay(run), 0.01);
  }

  @Test
  void withoutAReturnItTakesTheSecondChannel() throws AudioFileException {
    String both = both();
    Run run = Run.of("analyze", "--reference", both, "--json");
    assertEquals(100, delay(run), 0.01);
    assertEquals("inverted", section(run, "measurement").get("polarity"));
  }

  @Test
  void channelsCanBeSwapped() throws AudioFileException {
    Run run =
        Run.of(
            "analyze",
            "--reference",
            both(),
            "--reference-channel=2",
            "--return-channel=1",
            "--json");
    assertEquals(-100, delay(run), 0.01);
  }

  private String both() throws AudioFileException {
    Path both = folder.resolve("both.wav");
    return Recorded.write(both, Recorded.sweep(10, 1, 3), Recorded.sweep(110, -0.5, 4)).toString();
  }

  @Test
  void saysThatTwoFilesMustStartTogether() {
    Run run = Run.of("analyze", "--reference", sent, "--return", returned);
    assertTrue(run.out().startsWith("MEASURED: the return is 526 samples (10.96 ms) late."));
    assertTrue(run.out().contains("taken to start at the same instant"), run.out());
  }

  @Test
  void keepsItsBudget() {
    Run run = withChain("singer");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(run.out().startsWith("WITHIN: singer"), run.out());
  }

  @Test
  void missesItsBudgetAndExitsWithOne() throws IOException {
    Files.writeString(Path.of(chain), CHAIN.replace("398", "334"));
    Run run = withChain("singer", "--json");
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.err());
    assertEquals("outside-budget", run.json().get("outcome"));
    assertEquals("late", section(run, "comparison").get("verdict"));
    assertEquals(ExitCode.GOOD, withChain("singer", "--allow-samples=64").exitCode());
  }

  @Test
  void saysWhyAndWhatToMeasureNext() throws IOException {
    Files.writeString(Path.of(chain), CHAIN.replace("398", "270"));
    Run run = withChain("singer", "--json");
    List<?> explanations = (List<?>) section(run, "comparison").get("explanations");
    assertEquals("block-size", ((Map<?, ?>) explanations.get(0)).get("cause"));
    Map<?, ?> tellApart = (Map<?, ?>) section(run, "comparison").get("tellApart");
    assertEquals(128, tellApart.get("blockSize"));
    assertEquals(explanations.size(), ((List<?>) tellApart.get("outcomes")).size());
    String text = withChain("singer").out();
    assertTrue(text.contains("most likely  the host runs at a block of 128 samples"), text);
    assertTrue(text.contains("to tell      set the host to a block of "), text);
  }

  private Run withChain(String path, String... more) {
    List<String> args =
        new ArrayList<>(
            List.of("analyze", "--reference", sent, "--return", returned, "--chain", chain));
    args.addAll(List.of("--path", path));
    args.addAll(List.of(more));
    return Run.of(args.toArray(String[]::new));
  }

  @Test
  void anUnknownPathIsToldTheNearest() {
    Run run = withChain("singr");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().contains("singr") && run.err().contains("'singer'"), run.err());
    assertEquals("unknown-path", withChain("singr", "--json").error("code"));
  }

  @Test
  void aChainNeedsItsPathAndAPathItsChain() {
    Run noPath = Run.of("analyze", "--reference", sent, "--return", returned, "--chain", chain);
    assertEquals(ExitCode.USAGE, noPath.exitCode());
    assertTrue(noPath.err().contains("say which path: singer"), noPath.err());
    Run noChain = Run.of("analyze", "--reference", sent, "--return", returned, "--path", "singer");
    assertEquals(ExitCode.USAGE, noChain.exitCode());
  }

  @Test
  void aRigAtAnotherRateIsComparedByTime() throws IOException {
    Files.writeString(Path.of(chain), CHAIN.replace("48000", "96000").replace("398", "924"));
    assertEquals(ExitCode.GOOD, withChain("singer").exitCode());
  }

  @Test
  void differentRatesAreAFindingThatNamesBoth() throws AudioFileException {
    Signal slow = Recorded.at(new SampleRate(44_100), Recorded.sweep(526, 0.5, 5));
    String other = Recorded.write(folder.resolve("slow.wav"), slow).toString();
    Run run = Run.of("analyze", "--reference", sent, "--return", other, "--json");
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertEquals("not-trustworthy", run.json().get("outcome"));
    assertTrue(run.json().containsKey("measurement") && run.json().get("measurement") == null);
    Map<?, ?> finding = (Map<?, ?>) ((List<?>) run.json().get("findings")).get(0);
    assertEquals("rate-mismatch", finding.get("code"));
    String text = finding.get("text").toString();
    assertTrue(text.contains(sent + " has 48000 Hz"), text);
    assertTrue(text.contains(other + " has 44100 Hz"), text);
  }

  @Test
  void noiseIsNeverANumber() throws AudioFileException {
    String noise = Recorded.write(folder.resolve("noise.wav"), Recorded.sweep(0, 0, 6)).toString();
    Run run = Run.of("analyze", "--reference", sent, "--return", noise);
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertTrue(run.out().startsWith("No trustworthy reading: "), run.out());
    assertTrue(run.out().contains("\n  try  "), run.out());
  }

  @Test
  void aDelayBeyondTheSearchIsNoNumberAndSaysHowFarItLooked() {
    Run run = Run.of("analyze", "--reference", sent, "--return", returned, "--max-delay=0.005");
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out());
    assertTrue(run.out().contains("delays up to 0.005 s were looked for"), run.out());
  }

  @Test
  void aLongRecordingIsReadWhereItIsLoudest() throws AudioFileException {
    SampleRate slow = new SampleRate(8_000);
    Random random = new Random(7);
    double[] there = new double[70 * slow.hertz()];
    double[] back = new double[90 * slow.hertz()];
    for (int i = 0; i < there.length; i++) {
      there[i] =
          (i / slow.hertz() >= 35 && i / slow.hertz() < 65 ? 0.1 : 0.0001) * random.nextGaussian();
      back[i + 40] = 0.5 * there[i];
    }
    Path reference = Recorded.write(folder.resolve("long.wav"), Signal.of(slow, there));
    Path longer = Recorded.write(folder.resolve("longer.wav"), Signal.of(slow, back));
    Run run = Run.of("analyze", "--reference", reference.toString(), "--return", longer.toString());
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(run.out().startsWith("MEASURED: the return is 40 samples"), run.out());
    assertTrue(run.out().contains("read in 6 stretches of 6 s"), run.out());
  }

  private String recorded(String name, Signal... channels) throws AudioFileException {
    return Recorded.write(folder.resolve(name), channels).toString();
  }

  private static Signal joined(Signal one, Signal other) {
    double[] both = new double[one.length() + other.length()];
    one.copyTo(0, both, 0, one.length());
    other.copyTo(0, both, one.length(), other.length());
    return Signal.of(one.rate(), both);
  }

  @Test
  void readsManyReturnsAndOneSilentDoesNotSpoilTheOthers() throws AudioFileException {
    String file =
        recorded(
            "four.wav",
            Recorded.sweep(0, 1, 1),
            Recorded.sweep(100, 0.5, 2),
            Signal.silence(Recorded.RATE, 72_000),
            Recorded.sweep(300, -0.5, 3));
    Run run = Run.of("analyze", "--reference", file, "--return-channel=2-4", "--json");
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.err());
    List<?> channels = (List<?>) run.json().get("channels");
    assertEquals(
        List.of(2, 3, 4), channels.stream().map(c -> ((Map<?, ?>) c).get("channel")).toList());
    assertEquals("not-trustworthy", ((Map<?, ?>) channels.get(1)).get("outcome"));
    Map<?, ?> last = (Map<?, ?>) ((Map<?, ?>) channels.get(2)).get("measurement");
    assertEquals(300, ((Number) last.get("delaySamples")).doubleValue(), 0.01);
    Run good = Run.of("analyze", "--reference", file, "--return-channel=2,4");
    assertEquals(ExitCode.GOOD, good.exitCode(), good.err());
    assertTrue(good.out().startsWith("MEASURED: 2 of 2 channels."), good.out());
  }

  @Test
  void tracksAndTellsAStepInBlocks() throws AudioFileException, IOException {
    Signal there = Recorded.sweep(0, 1, 1);
    Signal before = joined(Recorded.sweep(100, 0.5, 2), Recorded.sweep(100, 0.5, 3));
    Signal after = joined(Recorded.sweep(164, 0.5, 4), Recorded.sweep(164, 0.5, 5));
    Signal twice = joined(there, there);
    String file = recorded("track.wav", joined(twice, twice), joined(before, after));
    Run run =
        Run.of(
            "follow",
            "--reference",
            file,
            "--window=1.5",
            "--chain",
            chain,
            "--path=singer",
            "--json");
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.err());
    assertEquals("", run.err());
    assertEquals("bad", ((Map<?, ?>) run.json().get("verdict")).get("standing"));
    Map<?, ?> comparison = (Map<?, ?>) run.json().get("comparison");
    assertEquals("early", comparison.get("verdict"));
    assertEquals(4, ((List<?>) run.json().get("track")).size());
    Map<?, ?> step = (Map<?, ?>) ((List<?>) run.json().get("steps")).get(0);
    assertEquals(1, step.get("blocks"));
    assertEquals(3, ((Number) step.get("atSeconds")).doubleValue(), 1.5);
    Run text = Run.on(true, "", Map.of(), "follow", "--reference", file, "--window=1.5");
    assertTrue(
        text.out().contains(": the delay jumped once, by +64 samples at 0:03.0; 4"), text.out());
    assertTrue(text.err().contains("windows") && text.err().contains(" %"), text.err());
  }

  /** Two samples more with each second and a half: 27.8 ppm; 4 ms are left to the 15 ms. */
  @Test
  void tracksADriftTowardsTheListenersLimit() throws AudioFileException {
    List<Signal> there = new ArrayList<>();
    List<Signal> back = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      there.add(Recorded.sweep(0, 1, 1));
      back.add(Recorded.sweep(522 + 2 * i, 0.5, 2 + i));
    }
    String file =
        recorded(
            "drift.wav",
            joined(joined(there.get(0), there.get(1)), joined(there.get(2), there.get(3))),
            joined(joined(back.get(0), back.get(1)), joined(back.get(2), back.get(3))));
    String[] track = {
      "follow", "--reference", file, "--window=1.5", "--chain", chain, "--path=singer", "--json"
    };
    Run run = Run.of(track);
    Map<?, ?> limit = (Map<?, ?>) run.json().get("towardsLimit");
    assertEquals(4e3 / 27.8, ((Number) limit.get("seconds")).doubleValue(), 2, run.out());
    String text = Run.of(List.of(track).subList(0, 7).toArray(String[]::new)).out();
    assertTrue(text.contains("limit        at this drift singer passes its 15 ms limit"), text);
  }

  @Test
  void comparesEveryPair() throws AudioFileException {
    String file =
        recorded(
            "kit.wav",
            Recorded.sweep(0, 1, 1),
            Recorded.sweep(40, 0.5, 2),
            Recorded.sweep(0, 0, 3));
    Run run = Run.of("pairs", file, "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    List<?> pairs = (List<?>) run.json().get("pairs");
    assertEquals(3, pairs.size());
    Map<?, ?> first = (Map<?, ?>) pairs.get(0);
    assertEquals(40, ((Number) first.get("delaySamples")).doubleValue(), 0.01);
    assertEquals(-6.02, ((Number) first.get("levelDb")).doubleValue(), 0.1);
    assertTrue(((Map<?, ?>) pairs.get(1)).get("delaySamples") == null, run.out());
    Run none = Run.of("pairs", "--channels=2-3", file);
    assertEquals(ExitCode.NOT_TRUSTWORTHY, none.exitCode());
    assertTrue(none.out().startsWith("MEASURED: 0 of 1 pairs"), none.out());
  }

  @Test
  void whatDoesNotGoTogetherIsRefused() {
    for (String[] wrong :
        new String[][] {
          {"pairs"},
          {"pairs", sent},
          {"pairs", sent, "--reference", sent},
          {"pairs", sent, "--max-delay=61"},
          {"analyze", "--channels=1-2", "--reference", sent},
          {"follow", "--reference", sent, "--return", returned},
          {
            "follow",
            "--reference",
            sent,
            "--return",
            returned,
            "--return-channel=1-2",
            "--window=1"
          },
          {"follow", "--reference", sent, "--return", returned, "--window=0.1"},
          {"follow", "--reference", sent, "--return", returned, "--window=20"},
          {"analyze", "--reference", sent, "--return", returned, "--return-channel=3-1"},
          {"analyze", "--reference", sent, "--return", returned, "--return-channel=1-65"},
          {"analyze", "--reference", sent, "--return", returned, "--arrival=last"},
        }) {
      Run run = Run.of(wrong);
      assertEquals(ExitCode.USAGE, run.exitCode(), () -> String.join(" ", wrong) + run.out());
      assertTrue(run.err().contains("try"), run.err());
    }
  }

  @Test
  void theSameChannelTwiceIsRefused() {
    Run run = Run.of("analyze", "--reference", sent, "--return", sent);
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().contains("both channel 1"), run.err());
  }

  @Test
  void aMissingFileIsNamed() {
    Run run = Run.of("analyze", "--reference", sent, "--return", "nowhere.wav", "--json");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals("unusable-file", run.error("code"));
    assertTrue(run.error("text").toString().contains("nowhere.wav"));
  }

  @Test
  void aMissingChannelIsNamed() {
    Run mono = Run.of("analyze", "--reference", sent);
    assertEquals(ExitCode.USAGE, mono.exitCode());
    assertTrue(mono.err().contains("--return"), mono.err());
    Run fifth = Run.of("analyze", "--reference", sent, "--return", returned, "--return-channel=5");
    assertEquals(ExitCode.USAGE, fifth.exitCode());
    assertTrue(fifth.err().contains("found 5"), fifth.err());
  }

  @Test
  void wrongArgumentsAreRefused() {
    assertEquals(ExitCode.USAGE, Run.of("analyze").exitCode());
    for (String wrong : List.of("--max-delay=0", "--max-delay=61", "--reference-channel=0")) {
      Run run = Run.of("analyze", "--reference", sent, "--return", returned, wrong);
      assertEquals(ExitCode.USAGE, run.exitCode(), wrong);
      assertTrue(run.err().contains(wrong.substring(0, wrong.indexOf('='))), run.err());
    }
  }
}
