package dev.loopgauge.report.rig;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.math.BigDecimal;
import java.nio.file.Path;

/**
 * A stimulus that was written to a file.
 *
 * @param file the file
 * @param kind the kind of stimulus
 * @param levelDbfs its peak, in dB relative to full scale
 * @param samples its length
 * @param bits how many bits a sample takes
 */
public record SignalDocument(
    String command,
    String outcome,
    Path file,
    String kind,
    BigDecimal levelDbfs,
    int sampleRateHz,
    int samples,
    int bits)
    implements Document {
  /** The document of a stimulus. */
  public static SignalDocument of(
      Path file, StimulusKind kind, double levelDbfs, SampleRate rate, int samples, int bits) {
    return new SignalDocument(
        "signal",
        "written",
        file,
        kind.label(),
        Numbers.rounded(levelDbfs, 2),
        rate.hertz(),
        samples,
        bits);
  }

  @Override
  public String text() {
    String seconds = Numbers.brief((double) samples / sampleRateHz, 3);
    return new Sheet()
        .line("Written: " + file)
        .row(kind, seconds + " s, peak " + Numbers.brief(levelDbfs.doubleValue(), 2) + " dBFS")
        .row("samples", samples + " at " + sampleRateHz + " Hz, " + bits + " bits")
        .row("next", "play it, record it, then give both recordings to `loopgauge analyze`")
        .toString();
  }
}
