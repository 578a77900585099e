package dev.loopgauge.report.rig;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.util.Map;

/**
 * A stimulus that was written to a file.
 *
 * @param file the file
 * @param kind the kind of stimulus
 * @param levelDbfs its peak, in dB relative to full scale
 * @param rate its sample rate
 * @param samples its length
 * @param bits how many bits a sample takes
 */
public record SignalDocument(
    String file, StimulusKind kind, double levelDbfs, SampleRate rate, int samples, int bits)
    implements Document {
  @Override
  public String text() {
    return new Sheet()
        .line("Written: " + file)
        .row(kind.label(), seconds() + " s, peak " + Numbers.brief(levelDbfs, 2) + " dBFS")
        .row("samples", samples + " at " + rate.hertz() + " Hz, " + bits + " bits")
        .row("next", "play it, record it, then give both recordings to `loopgauge analyze`")
        .toString();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("signal", "written");
    json.put("file", file);
    json.put("kind", kind.label());
    json.put("levelDbfs", Numbers.rounded(levelDbfs, 2));
    json.put("sampleRateHz", rate.hertz());
    json.put("samples", samples);
    json.put("bits", bits);
    return json;
  }

  private String seconds() {
    return Numbers.brief(new Latency(samples, rate).seconds(), 3);
  }
}
