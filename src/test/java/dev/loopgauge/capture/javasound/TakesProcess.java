package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.StringJoiner;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A process of its own that plays noise on the first channels of the platform's default device and
 * says how late each return is, since ALSA reads its configuration once in a process. Arguments:
 * the sample rate, the number of channels, the buffer in samples, how many takes, the frames of a
 * take; further sample rates follow, at each of which it does the same anew.
 *
 * <p>It says {@value #USABLE} or {@value #UNUSABLE}, then {@value #TAKE} before each take and one
 * line after it: {@code lag/gain} of each return, the lag in samples; or {@value #FAILED}, the kind
 * of the failure and its text, and ends.
 */
final class TakesProcess {
  static final String USABLE = "usable";
  static final String UNUSABLE = "unusable";
  static final String TAKE = "take";
  static final String FAILED = "failed";

  private static final int STIMULUS = 1_024;
  private static final long SEED = 48;

  private final AudioSession session;
  private final double[] noise = new Random(SEED).doubles(STIMULUS, -0.25, 0.25).toArray();

  private TakesProcess(AudioSession session) {
    this.session = session;
  }

  /** Runs the takes. */
  public static void main(String[] args) {
    int[] numbers = Stream.of(args).mapToInt(Integer::parseInt).toArray();
    JavaSoundBackend backend = new JavaSoundBackend();
    System.out.println(backend.look() instanceof Availability.Usable ? USABLE : UNUSABLE);
    takes(backend, numbers[0], numbers);
    IntStream.of(numbers).skip(5).forEach(rateHz -> takes(backend, rateHz, numbers));
  }

  private static void takes(JavaSoundBackend backend, int rateHz, int[] numbers) {
    Optional<SampleRate> rate = Optional.of(new SampleRate(rateHz));
    List<Integer> channels = IntStream.rangeClosed(1, numbers[1]).boxed().toList();
    Optional<String> byDefault = Optional.empty();
    SessionRequest request =
        new SessionRequest(byDefault, byDefault, channels, channels, rate, numbers[2]);
    try (AudioSession session = backend.open(request)) {
      TakesProcess takes = new TakesProcess(session);
      for (int take = 0; take < numbers[3]; take++) {
        System.out.println(TAKE);
        System.out.println(takes.take(channels.size(), numbers[4]));
      }
    } catch (CaptureException e) {
      System.out.println(FAILED + " " + e.kind() + " " + e.getMessage());
    }
  }

  private String take(int channels, int frames) throws CaptureException {
    Signal send = Signal.of(session.info().rate(), noise);
    Capture capture =
        session.capture(new Take(Collections.nCopies(channels, send), frames, List.of()));
    StringJoiner line = new StringJoiner(" ");
    for (Signal heard : capture.returns()) {
      line.add(strongest(heard.toArray()));
    }
    return line.toString();
  }

  /** The lag at which the direct sum of products is largest in magnitude. */
  private String strongest(double[] heard) {
    int lag = 0;
    double gain = 0;
    for (int at = 0; at + STIMULUS <= heard.length; at++) {
      double sum = 0;
      double energy = 0;
      for (int i = 0; i < STIMULUS; i++) {
        sum += noise[i] * heard[at + i];
        energy += noise[i] * noise[i];
      }
      if (Math.abs(sum / energy) > Math.abs(gain)) {
        lag = at;
        gain = sum / energy;
      }
    }
    return lag + "/" + gain;
  }
}
