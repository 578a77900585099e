package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.LostFrames;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class SimulatedStreamTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final double LOOP = 418.4;
  private static final int HOST_BLOCK = 64;
  private static final int SECONDS = 6;
  private static final long SEED = 18;

  /**
   * Two returns' noise floors at -90 dBFS; six times that is passed once in 500 million samples.
   */
  private static final double NOISE = 6 * Math.sqrt(2) * Decibels.toFactor(-90);

  @Test
  void theCableHearsTheProgrammeAndThePathHearsItLater() throws CaptureException {
    float[][] heard = heard();
    assertTrue(rms(heard[0], 0, SECONDS) > Decibels.toFactor(-40), "seed " + SEED);
    assertNear(late(heard[0], LOOP, 1), heard[1], 0, SECONDS);
  }

  @ParameterizedTest
  @CsvSource({
    "inverted@2-4, 0, -1",
    "gain=-12@2-4, 0, 0.251188643",
    "silent@2-4, 0, 0",
    "block-size=128@2-4, 128, 1",
    "lost-block=0.5@1.5-4, 64, 1"
  })
  void aFaultBeginsAndEndsAtItsSeconds(String fault, double later, double factor)
      throws CaptureException {
    float[][] heard = heard(fault);
    assertNear(late(heard[0], LOOP, 1), heard[1], 0, 2);
    assertNear(late(heard[0], LOOP + later, factor), heard[1], 2.01, 4);
    assertNear(late(heard[0], LOOP, 1), heard[1], 4, SECONDS);
  }

  @Test
  void aDriftBeginsWithNoneAndGrows() throws CaptureException {
    float[][] heard = heard("drift=100@2");
    assertNear(late(heard[0], LOOP, 1), heard[1], 0, 2);
    double afterTwoSeconds = 2 * RATE.hertz() * 100e-6;
    int at = 4 * RATE.hertz();
    double[] expected = late(heard[0], LOOP + afterTwoSeconds, 1);
    assertArrayEquals(
        Arrays.copyOfRange(expected, at - 5, at + 5),
        Arrays.copyOfRange(widened(heard[1]), at - 5, at + 5),
        2e-3,
        "seed " + SEED);
  }

  @Test
  void aDropoutCountsItsOwnTimeFromWhereItBegins() throws CaptureException {
    float[][] heard = heard("dropout=0.5:100@2");
    assertNear(new double[SECONDS * RATE.hertz()], heard[1], 2.5, 2.6);
    assertNear(late(heard[0], LOOP, 1), heard[1], 2.6, SECONDS);
  }

  /** In blocks each effect makes of a programme what it makes of it in one piece. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "gain=-12",
        "inverted",
        "silent",
        "hum=-20",
        "compressor=-30:4",
        "band-limit=200-4000",
        "second-arrival=2.5:-6",
        "chorus=0.5:3",
        "drift=50",
        "dropout=1.4:20",
        "lost-block=1.4",
        "stutters=0.3:1.5:1.7",
        "wrong-speed=44100",
        "skew=0.4",
        "high-pass=80:4",
        "peak=1000:6:2"
      })
  void aStreamIsTheSameAsOnePiece(String fault) {
    StreamScene scene = new StreamScene(RATE, HOST_BLOCK, 0, SEED);
    ShowProgramme programme = new ShowProgramme(RATE, SEED);
    SoundFault effect = (SoundFault) FaultFormat.parse(fault);
    int length = 5 * RATE.hertz();
    double[] whole = effect.on(programme.read(0, length), scene.at(0));
    Sound stream = effect.over(programme, scene);
    for (int from = 1_000; from < 4 * RATE.hertz(); from += 7_919) {
      double[] expected = Arrays.copyOfRange(whole, from, from + 7_919);
      assertArrayEquals(expected, stream.read(from, 7_919), 1e-4, fault + " from " + from);
    }
  }

  @Test
  void aStreamIsClippedByOnePeakThroughout() throws CaptureException {
    float[] clipped = heard("clip=-6")[1];
    float[] clean = heard()[1];
    int loud = loudestBelow(0.9, clipped);
    double[] expected = late(clean, 0, clipped[loud] / clean[loud]);
    assertTrue(clipped[loud] > 2 * clean[loud], "raised by nothing");
    for (int i = 0; i < clipped.length; i++) {
      assertEquals(Math.max(-1, Math.min(1, expected[i])), clipped[i], 0.01, "frame " + i);
    }
  }

  @Test
  void theSameSeedGivesTheSameStreamAndAnotherOneAnother() throws CaptureException {
    assertArrayEquals(heard("noise=-40")[1], heard("noise=-40")[1]);
    float[] other = recorded(backend(SEED + 1, Pace.UNBOUND))[0];
    assertTrue(Math.abs(correlation(heard()[0], other)) < 0.1, "seed " + SEED);
  }

  /** A second long stretches of it are as unlike as noise is. */
  @Test
  void theProgrammeNeverComesBack() {
    ShowProgramme programme = new ShowProgramme(RATE, SEED);
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 6; i++) {
      double[] one = programme.read(random.nextLong(10L * 3600 * RATE.hertz()), RATE.hertz());
      double[] two = programme.read(random.nextLong(10L * 3600 * RATE.hertz()), RATE.hertz());
      assertTrue(Math.abs(correlation(narrowed(one), narrowed(two))) < 0.5, "pair " + i);
    }
  }

  @Test
  void nothingIsEverLouderThanFullScaleAndSometimesNothingIsHeard() {
    ShowProgramme programme = new ShowProgramme(RATE, SEED);
    int silent = 0;
    int seconds = 150;
    for (int second = 0; second < seconds; second++) {
      double[] heard = programme.read((long) second * RATE.hertz(), RATE.hertz());
      double peak = Arrays.stream(heard).map(Math::abs).max().orElseThrow();
      assertTrue(peak < 0.9, "second " + second);
      silent += peak < 1e-4 ? 1 : 0;
    }
    assertTrue(silent > seconds / 50 && silent < seconds / 4, silent + " of " + seconds);
  }

  @Test
  void aTestCanLetTimePassByItself() throws CaptureException {
    List<Double> asked = new ArrayList<>();
    recorded(backend(SEED, () -> asked::add));
    assertEquals(10 * SECONDS, asked.size());
    assertEquals(0.1, asked.get(0), 1e-9);
    assertEquals(SECONDS, asked.get(asked.size() - 1), 1e-9);
  }

  @Test
  void aCardThatGoesAwayEndsTheStream() {
    CaptureException gone =
        assertThrows(CaptureException.class, () -> recorded(backend(SEED, Pace.UNBOUND, "gone@2")));
    assertEquals(CaptureException.Kind.GONE, gone.kind());
    assertEquals("the device rig went away after 2.0 s", gone.getMessage());
  }

  @Test
  void aCardThatDeliversTooLittleTellsEachLoss() throws CaptureException {
    Recorder recorder = new Recorder(2);
    try (AudioSession session = backend(SEED, Pace.UNBOUND, "short@2-4").open(request())) {
      session.stream(recorder);
    }
    List<Long> lost = recorder.lost.stream().map(LostFrames::frame).toList();
    assertEquals(List.of(29L * 4_800, 39L * 4_800), lost);
  }

  private static int loudestBelow(double limit, float[] sound) {
    int loudest = 0;
    for (int i = 0; i < sound.length; i++) {
      loudest = sound[i] < limit && sound[i] > sound[loudest] ? i : loudest;
    }
    return loudest;
  }

  private static float[][] heard(String... faults) throws CaptureException {
    return recorded(backend(SEED, Pace.UNBOUND, faults));
  }

  private static float[][] recorded(SimulatedBackend backend) throws CaptureException {
    Recorder recorder = new Recorder(2);
    try (AudioSession session = backend.open(request())) {
      session.stream(recorder);
    }
    return recorder.heard;
  }

  private static SimulatedBackend backend(long seed, Pace pace, String... faults) {
    Chain chain = Rigs.chain();
    List<PathFault> parsed =
        List.of(faults).stream().map(text -> PathFault.parse(text, List.of())).toList();
    Plugs plugs = Plugs.measuring(chain, chain.path(Rigs.PATH), Optional.empty());
    return new SimulatedBackend(chain, plugs, parsed, seed, pace);
  }

  /** A watch opens no sends. */
  private static SessionRequest request() {
    return new SessionRequest(
        Optional.empty(), Optional.empty(), List.of(), List.of(1, 2), Optional.of(RATE), 0);
  }

  private static double[] late(float[] sound, double samples, double factor) {
    double[] late = Interpolation.delayed(widened(sound), samples);
    return Arrays.stream(late).map(sample -> factor * sample).toArray();
  }

  private static void assertNear(double[] expected, float[] heard, double from, double to) {
    int start = RATE.samplesIn(from);
    int end = RATE.samplesIn(to);
    assertArrayEquals(
        Arrays.copyOfRange(expected, start, end),
        Arrays.copyOfRange(widened(heard), start, end),
        NOISE,
        "from " + from + " to " + to + " s, seed " + SEED);
  }

  private static double[] widened(float[] sound) {
    double[] wide = new double[sound.length];
    for (int i = 0; i < wide.length; i++) {
      wide[i] = sound[i];
    }
    return wide;
  }

  private static float[] narrowed(double[] sound) {
    float[] narrow = new float[sound.length];
    for (int i = 0; i < narrow.length; i++) {
      narrow[i] = (float) sound[i];
    }
    return narrow;
  }

  private static double rms(float[] sound, int from, int to) {
    double sum = 0;
    for (int i = from * RATE.hertz(); i < to * RATE.hertz(); i++) {
      sum += (double) sound[i] * sound[i];
    }
    return Math.sqrt(sum / ((to - from) * RATE.hertz()));
  }

  private static double correlation(float[] one, float[] two) {
    double product = 0;
    double ofOne = 1e-20;
    double ofTwo = 1e-20;
    for (int i = 0; i < one.length; i++) {
      product += (double) one[i] * two[i];
      ofOne += (double) one[i] * one[i];
      ofTwo += (double) two[i] * two[i];
    }
    return product / Math.sqrt(ofOne * ofTwo);
  }

  private static final class Recorder implements BlockListener {
    private final float[][] heard;
    private final List<LostFrames> lost = new ArrayList<>();

    Recorder(int returns) {
      heard = new float[returns][SECONDS * RATE.hertz()];
    }

    @Override
    public boolean block(long frame, float[][] returns, int length) {
      for (int i = 0; i < returns.length; i++) {
        System.arraycopy(returns[i], 0, heard[i], (int) frame, length);
      }
      return frame + length < heard[0].length;
    }

    @Override
    public void lost(LostFrames frames) {
      lost.add(frames);
    }
  }
}
