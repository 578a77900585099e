package dev.loopgauge.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.filter.AllPass;
import dev.loopgauge.signal.filter.BandPass;
import dev.loopgauge.signal.filter.Crossover;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.Filter;
import dev.loopgauge.signal.filter.HighPass;
import dev.loopgauge.signal.filter.LowPass;
import dev.loopgauge.signal.filter.Peak;
import dev.loopgauge.signal.filter.Shelf;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Impulse responses, responses and group delays are those that SciPy computes from its own designs:
 * {@code butter}, and {@code bilinear} on the analogue prototypes that the cookbook prints; a
 * crossover's sum is the all-pass that it is in theory.
 */
@NeedsTool({"/usr/bin/python3", "/usr/lib/python3/dist-packages/scipy/__init__.py"})
class FiltersAgainstScipyIT {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final double[] HERTZ = {35, 80, 250, 1000, 3100, 9000, 19_000};
  private static final int SAMPLES = 4_000;

  /** {@code t} is a list of transfer functions, one after the other. */
  private static final String SCRIPT =
      """
      import sys, numpy as np, scipy.signal as s
      fs = 48000
      def bw(kind, n, f):
          sos = s.butter(n, f, kind, fs=fs, output='sos')
          return [(x[:3], x[3:]) for x in sos]
      def analog(b, a, f):
          w = 2 * fs * np.tan(np.pi * f / fs)
          up = lambda c: [x / w ** (len(c) - 1 - i) for i, x in enumerate(c)]
          return [s.bilinear(up(b), up(a), fs)]
      A = lambda db: 10 ** (db / 40)
      t = eval(sys.argv[1])
      f = np.array(eval(sys.argv[2]))
      h = np.zeros(int(sys.argv[3])); h[0] = 1
      H = np.ones(len(f), complex); g = np.zeros(len(f))
      for b, a in t:
          h = s.lfilter(b, a, h)
          H = H * s.freqz(b, a, f, fs=fs)[1]
          g = g + s.group_delay((b, a), f, fs=fs)[1]
      for row in (h, H.real, H.imag, g):
          print(' '.join(repr(float(x)) for x in row))
      """;

  static Stream<Arguments> designs() {
    return Stream.of(
        Arguments.of(new HighPass(80, 1), "bw('high', 1, 80)"),
        Arguments.of(new HighPass(80, 2), "bw('high', 2, 80)"),
        Arguments.of(new HighPass(300, 3), "bw('high', 3, 300)"),
        Arguments.of(new HighPass(300, 4), "bw('high', 4, 300)"),
        Arguments.of(new LowPass(8000, 1), "bw('low', 1, 8000)"),
        Arguments.of(new LowPass(8000, 2), "bw('low', 2, 8000)"),
        Arguments.of(new LowPass(3000, 3), "bw('low', 3, 3000)"),
        Arguments.of(new LowPass(300, 4), "bw('low', 4, 300)"),
        Arguments.of(new Crossover(80, 2, Crossover.Output.LOW), "bw('low', 1, 80) * 2"),
        Arguments.of(new Crossover(80, 4, Crossover.Output.LOW), "bw('low', 2, 80) * 2"),
        Arguments.of(new Crossover(1200, 4, Crossover.Output.HIGH), "bw('high', 2, 1200) * 2"),
        Arguments.of(new Crossover(1200, 2, Crossover.Output.SUM), "analog([-1, 1], [1, 1], 1200)"),
        Arguments.of(
            new Crossover(1200, 4, Crossover.Output.SUM),
            "analog([1, -2 ** .5, 1], [1, 2 ** .5, 1], 1200)"),
        Arguments.of(BandPass.TELEPHONE, "bw('high', 4, 300) + bw('low', 4, 3400)"),
        Arguments.of(BandPass.SUBWOOFER, "bw('high', 4, 30) + bw('low', 4, 90)"),
        Arguments.of(
            new Shelf(Shelf.Side.LOW, 200, -6),
            "analog([A(-6), A(-6) * (2 * A(-6)) ** .5, A(-6) ** 2],"
                + " [A(-6), (2 * A(-6)) ** .5, 1], 200)"),
        Arguments.of(
            new Shelf(Shelf.Side.HIGH, 4000, 6),
            "analog([A(6) ** 2, A(6) * (2 * A(6)) ** .5, A(6)],"
                + " [1, (2 * A(6)) ** .5, A(6)], 4000)"),
        Arguments.of(
            new Peak(1000, 6, 2), "analog([1, A(6) / 2, 1], [1, 1 / (2 * A(6)), 1], 1000)"),
        Arguments.of(new AllPass(1000, 1), "analog([-1, 1], [1, 1], 1000)"),
        Arguments.of(new AllPass(1000, 2), "analog([1, -2 ** .5, 1], [1, 2 ** .5, 1], 1000)"));
  }

  @ParameterizedTest
  @MethodSource("designs")
  void isWhatScipyComputes(Design design, String transfers) throws Exception {
    Filter filter = design.at(RATE);
    List<double[]> rows = scipy(transfers);
    double[] impulse = new double[SAMPLES];
    impulse[0] = 1;
    double[] answer = filter.on(impulse);
    for (int i = 0; i < SAMPLES; i++) {
      assertEquals(rows.get(0)[i], answer[i], 1e-9, design + " after " + i + " samples");
    }
    for (int i = 0; i < HERTZ.length; i++) {
      double cycles = HERTZ[i] / RATE.hertz();
      String where = design + " at " + HERTZ[i] + " Hz";
      assertEquals(rows.get(1)[i], filter.response(cycles).re(), 1e-9, where);
      assertEquals(rows.get(2)[i], filter.response(cycles).im(), 1e-9, where);
      assertEquals(
          rows.get(3)[i], filter.groupDelay(cycles), delta(HERTZ[i], rows.get(3)[i]), where);
    }
  }

  /**
   * SciPy multiplies both polynomials out before it divides, and so loses digits in the bass: at 35
   * Hz its delay of a Butterworth filter is wrong by 3 parts in a million, where {@code
   * ButterworthTest} holds ours to one in a thousand million of the closed form.
   */
  private static double delta(double hertz, double delay) {
    return (hertz < 1000 ? 1e-5 : 1e-9) * Math.max(1, Math.abs(delay));
  }

  private static List<double[]> scipy(String transfers) throws Exception {
    byte[] printed =
        Tool.run(
            "/usr/bin/python3",
            "-W",
            "ignore",
            "-c",
            SCRIPT,
            transfers,
            Arrays.toString(HERTZ),
            "" + SAMPLES);
    return new String(printed, StandardCharsets.UTF_8)
        .lines()
        .map(line -> Arrays.stream(line.split(" ")).mapToDouble(Double::parseDouble).toArray())
        .toList();
  }
}
