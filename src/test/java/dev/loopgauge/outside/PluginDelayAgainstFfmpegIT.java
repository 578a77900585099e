package dev.loopgauge.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.verify.HostAnswer;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.ReportedDelay;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A look-ahead limiter of Debian's swh-plugins, which states its latency on an output port, run by
 * ffmpeg on recorded speech of alsa-utils. Told to, ffmpeg takes the latency back; else it doesn't.
 */
@NeedsTool({
  "ffmpeg",
  "/usr/share/sounds/alsa/Front_Center.wav",
  "/usr/lib/ladspa/fast_lookahead_limiter_1913.so"
})
class PluginDelayAgainstFfmpegIT {
  private static final String SPEECH = "/usr/share/sounds/alsa/Front_Center.wav";
  private static final String LIMITER =
      "ladspa=f=fast_lookahead_limiter_1913:p=fastLookaheadLimiter:c=c0=0|c1=0|c2=0.5:l=";
  private static final Pattern STATED = Pattern.compile("latency \\[<float> \\(value ([0-9.]+)\\)");

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000, 96_000})
  void findsWhatTheLimiterAddsAndWhoTellsTheTruthAboutIt(int hertz) throws Exception {
    String before = "aresample=" + hertz + ",volume=-6dB,aformat=sample_fmts=flt";
    render("bypassed.wav", before);
    ReportedDelay stated = stated(render("active.wav", before + "," + LIMITER + "0"));
    render("taken-back.wav", before + "," + LIMITER + "1");
    Measurement active = measured("active.wav");
    Measurement bypassed = measured("bypassed.wav");

    HostCheck truth = HostCheck.ofDifference(active, bypassed, Optional.of(stated));
    assertEquals(HostAnswer.AGREES, truth.answer(), truth.toString());
    assertTrue(truth.measuredSamples() > 100, truth.toString());
    assertEquals(stated.samples(), truth.measuredSamples(), 0.05);

    HostCheck misreport = check(active, bypassed, 0);
    assertEquals(HostAnswer.NOT_REPORTED, misreport.answer(), misreport.toString());
    Measurement takenBack = measured("taken-back.wav");
    assertEquals(HostAnswer.NO_DELAY, check(takenBack, bypassed, 0).answer());
    assertEquals(HostAnswer.TAKEN_BACK, check(takenBack, bypassed, stated.samples()).answer());
  }

  private static HostCheck check(Measurement active, Measurement bypassed, double reported) {
    return HostCheck.ofDifference(active, bypassed, Optional.of(ReportedDelay.ofSamples(reported)));
  }

  /** Renders the speech through a filter and gives back what ffmpeg said meanwhile. */
  private String render(String file, String filter) throws Exception {
    String command =
        "ffmpeg -loglevel debug -y -i %s -ac 2 -af '%s' -c:a pcm_f32le %s 2>&1"
            .formatted(SPEECH, filter, folder.resolve(file));
    return new String(Tool.run("sh", "-c", command), StandardCharsets.UTF_8);
  }

  private static ReportedDelay stated(String said) {
    Matcher matcher = STATED.matcher(said);
    assertTrue(matcher.find(), "the limiter states no latency: " + said);
    return ReportedDelay.ofSamples(Double.parseDouble(matcher.group(1)));
  }

  private Measurement measured(String file) throws Exception {
    Estimate estimate =
        new DelayEstimator(0.1).estimate(List.of(new Reading(left("bypassed.wav"), left(file))));
    if (estimate instanceof Estimate.Found found) {
      return found.measurement();
    }
    throw new AssertionError(file + ": " + estimate.findings());
  }

  private Signal left(String file) throws Exception {
    try (WavFile wav = WavFile.open(folder.resolve(file))) {
      return wav.channel(1);
    }
  }
}
