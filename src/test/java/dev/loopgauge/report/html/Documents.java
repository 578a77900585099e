package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Json;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;

/** Documents as commands print them, of an invented theatre and an invented festival field. */
public final class Documents {
  private Documents() {}

  /** A path that is one block late, with its response, bands, arrivals and a finding. */
  public static final String LATE =
      """
      {"schema":1,"command":"measure","outcome":"outside-budget",
       "measurement":{"sampleRateHz":48000,"delaySamples":723.0184,"delayMs":15.062883,
        "uncertaintySamples":0.036,"uncertaintyMs":0.00075,"coverageFactor":2,"polarity":"normal",
        "levelDb":-12.04,"signalToNoiseDb":61.2,"method":"referenced","repeats":3,
        "clockDriftPpm":0.02,
        "arrivals":[{"delaySamples":723.0184,"levelDb":-12.04,"polarity":"normal"},
                    {"delaySamples":911.5,"levelDb":-24.5,"polarity":"inverted"}],
        "bands":[{"centreHz":125,"delaySamples":724.1,"uncertaintySamples":1.3},
                 {"centreHz":250,"delaySamples":723.4,"uncertaintySamples":0.6},
                 {"centreHz":1000,"delaySamples":723.0,"uncertaintySamples":0.1},
                 {"centreHz":4000,"delaySamples":723.02,"uncertaintySamples":0.05}]},
       "findings":[{"code":"two-arrivals","refuses":false,
        "text":"a second arrival 3.93 ms later, 12.5 dB below","hint":"is a wedge open?"}],
       "comparison":{"path":"vocal-house","predictedSamples":595,"predictedMs":12.395833,
        "toleranceSamples":3,"differenceSamples":128.0184,"differenceMs":2.66705,"verdict":"late",
        "explanations":[{"cause":"block-size",
         "text":"the host runs at a block of 128 samples, not 64: check its settings",
         "predictedSamples":723,"residualSamples":0.0184}]}}
      """;

  /** A path within its budget. */
  public static final String WITHIN =
      """
      {"schema":1,"command":"analyze","outcome":"within-budget",
       "measurement":{"sampleRateHz":48000,"delaySamples":61.02,"delayMs":1.27125,
        "uncertaintySamples":0.05,"uncertaintyMs":0.00105,"coverageFactor":2,"polarity":"normal",
        "levelDb":-3,"signalToNoiseDb":55,"method":"referenced","repeats":1,"clockDriftPpm":null,
        "arrivals":[{"delaySamples":61.02,"levelDb":-3,"polarity":"normal"}],"bands":[]},
       "findings":[],
       "comparison":{"path":"vocal-in-ear","predictedSamples":61,"predictedMs":1.270833,
        "toleranceSamples":1,"differenceSamples":0.02,"differenceMs":0.000417,"verdict":"within",
        "explanations":[]}}
      """;

  /** A path without a reading. */
  public static final String REFUSED =
      """
      {"schema":1,"command":"measure","outcome":"not-trustworthy","measurement":null,
       "findings":[{"code":"no-return","refuses":true,"text":"return 2 hears no sweep",
        "hint":"is return 2 the right channel?"}],
       "comparison":null}
      """;

  /** The budgets of both paths and of a stream with its picture. */
  public static final String BUDGET =
      """
      {"schema":1,"command":"budget","outcome":"predicted","paths":[
       {"name":"vocal-house","listener":"house","delaySamples":847.21,"delayMs":17.650208,
        "toleranceSamples":3,"standing":"over","cautionMs":null,"limitMs":15,
        "limitSource":"common practice, no source",
        "stages":[{"name":"stage-box-in","delaySamples":12,"delayMs":0.25},
         {"name":"console","delaySamples":38.4,"delayMs":0.8},
         {"name":"host-blocks","delaySamples":128,"delayMs":2.666667},
         {"name":"host-fixed","delaySamples":416.6,"delayMs":8.679167},
         {"name":"throw","delaySamples":252.21,"delayMs":5.254375}]},
       {"name":"stream-mix","listener":"stream","delaySamples":571,"delayMs":11.895833,
        "toleranceSamples":2,"standing":"within","cautionMs":null,"limitMs":null,
        "limitSource":"judged against its picture",
        "picture":{"name":"cameras","rule":"ebu-r37","soundEarlySamples":1835.6,
         "soundEarlyMs":38.241667,"standing":"within","addToSoundSamples":1835.6,
         "addToSoundMs":38.241667,"addToPictureSamples":0,"addToPictureMs":0},
        "stages":[{"name":"console","delaySamples":38.4,"delayMs":0.8},
         {"name":"host-fixed","delaySamples":532.6,"delayMs":11.095833}]}],
       "inputs":[],"mixes":[]}
      """;

  /** A document as a reading from a file of that name. */
  public static ReadDocument reading(String name, String json) {
    try {
      Map<String, Object> document = Json.read(json);
      return ReadDocument.ofFile(name, document);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
