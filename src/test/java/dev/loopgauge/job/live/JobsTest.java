package dev.loopgauge.job.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.ForwardedSession;
import dev.loopgauge.capture.simulated.Pace;
import dev.loopgauge.capture.simulated.PathFault;
import dev.loopgauge.capture.simulated.Plugs;
import dev.loopgauge.capture.simulated.SimulatedBackend;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.HostReport;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.SoFar;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.measure.Calibration;
import dev.loopgauge.report.form.Json;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program's jobs without its command line: records in, documents out. */
class JobsTest {
  /** 20 + 2 * 64 + 100 = 248 samples. */
  private static final String CHAIN =
      """
      chain: Quarry stage
      sample-rate: 48000
      block-size: 64
      stages:
        box: { samples: 20 }
        host-blocks: { blocks: 2 }
        host-fixed: { samples: 100 }
      paths:
        vocal: { listener: house, stages: [box, host-blocks, host-fixed] }
      """;

  @TempDir Path folder;
  private BudgetChoice vocal;
  private Site site;

  @BeforeEach
  void open() throws IOException {
    Path chain = Files.writeString(folder.resolve("quarry.yaml"), CHAIN);
    vocal = new BudgetChoice(Optional.of(chain), Optional.of("vocal"), 1);
    BuiltInRig rig =
        imitated ->
            new SimulatedBackend(
                imitated.chain(),
                Plugs.measuring(
                    imitated.chain(), imitated.measured().orElseThrow(), Optional.empty()),
                imitated.faults().stream().map(text -> PathFault.parse(text, List.of())).toList(),
                imitated.seed(),
                Pace.UNBOUND);
    site =
        new Site(
            new AudioSystem(List::of, rig),
            Person.nobody(),
            Map.of("LOOPGAUGE_DATA", folder.toString()));
  }

  @Test
  void measuresOnePath() throws Exception {
    Answer good = new MeasureJob(request(RigChoice.FLAWLESS), false, false).run(site);
    RigChoice slow = new RigChoice(List.of("block-size=128"), 1);
    Answer late = new MeasureJob(request(slow), false, false).run(site);

    assertEquals(Ending.GOOD, good.ending());
    assertEquals(248, number(json(good), "measurement", "delaySamples"), 0.05);
    assertEquals(Ending.OUTSIDE, late.ending());
    assertEquals(128, number(json(late), "comparison", "differenceSamples"), 0.05);
  }

  /** An audio server takes longer to let go of its ports than a take to be read. */
  @Test
  void tellsWhatWasMeasuredBeforeTheDevicesAreClosed() throws Exception {
    List<String> order = new ArrayList<>();
    AudioSystem heard =
        site.audio()
            .tappedBy(
                (session, asked) ->
                    new ForwardedSession(session) {
                      @Override
                      public void close() {
                        order.add("closed");
                        super.close();
                      }
                    });
    SoFar soFar = new SoFar(now -> order.add("told " + now.get().ending()));
    new MeasureJob(request(RigChoice.FLAWLESS), false, false)
        .run(new Site(heard, Person.nobody(), site.environment()), soFar);

    assertEquals(List.of("told GOOD", "closed"), order);
  }

  @Test
  void soaksOnePath() throws Exception {
    Answer clean = new SoakJob(request(RigChoice.FLAWLESS), 0.1).run(site, new SoFar());

    assertEquals(Ending.GOOD, clean.ending());
    assertEquals("soak", json(clean).get("command"));
    assertEquals("within-budget", json(clean).get("outcome"));
    assertEquals("good", ((Map<?, ?>) json(clean).get("verdict")).get("standing"));
    assertTrue(number(json(clean), "soak", "heardSeconds") >= 6, json(clean).toString());
  }

  @Test
  void measuresASeriesOfBlockSizes() throws Exception {
    SeriesJob job =
        new SeriesJob(
            live(), vocal, RigChoice.FLAWLESS, List.of(64, 256, 1024), 0, Optional.empty(), false);
    Answer series = job.run(site, new SoFar());

    assertEquals(Ending.GOOD, series.ending());
    assertEquals(2, number(json(series), "fit", "blocks"), 1e-3);
    assertEquals(120, number(json(series), "fit", "fixedSamples"), 0.1);
  }

  @Test
  void findsOutWhichReturnHearsWhichSend() throws Exception {
    Answer patched = new PatchJob(live(), vocal, RigChoice.FLAWLESS, false).run(site);

    assertEquals(Ending.GOOD, patched.ending());
    assertEquals("patch", json(patched).get("command"));
  }

  /** The built-in rig has a card of its own at each opening. */
  @Test
  void refusesToCalibrateWhatShifts() {
    LiveChoice lone = live(Optional.of(2), Optional.empty());
    assertThrows(
        UsageException.class, () -> new CalibrateJob(lone, RigChoice.FLAWLESS, true).run(site));
    assertEquals(List.of(), calibrations());
  }

  @Test
  void aSkewOfTheChannelsIsTakenOffWhatIsMeasuredLater() throws Exception {
    RigChoice skewed = new RigChoice(List.of("skew=-1.375"), 1);
    Answer before = new MeasureJob(request(skewed), false, false).run(site);
    Answer kept = new CalibrateJob(live(), skewed, false).run(site);
    Answer after = new MeasureJob(request(skewed), false, false).run(site);

    assertEquals(248 - 1.375, number(json(before), "measurement", "delaySamples"), 0.05);
    assertEquals(Ending.GOOD, kept.ending());
    assertEquals(-1.375, number(json(kept), "calibration", "delaySamples"), 0.05);
    assertEquals(1, number(json(kept), "calibration", "referenceReturn"));
    assertEquals(248, number(json(after), "measurement", "delaySamples"), 0.05);
    assertTrue(
        number(json(after), "measurement", "uncertaintySamples")
            > number(json(before), "measurement", "uncertaintySamples"));
    assertNull(json(before).get("notes"));
    assertTrue(json(after).get("notes").toString().contains("is taken off: -1.375"));
    assertTrue(kept.document().text().contains("skew         1.375 ± "), kept.document().text());
    assertTrue(kept.document().text().contains("before the reference"), kept.document().text());
  }

  @Test
  void aSoakTakesTheSkewOffToo() throws Exception {
    new CalibrateJob(live(), new RigChoice(List.of("skew=3"), 1), false).run(site);
    Answer soaked = new SoakJob(request(RigChoice.FLAWLESS), 0.1).run(site, new SoFar());

    assertEquals(248 - 3, number(json(soaked), "soak", "delaySamples"), 0.05);
  }

  @Test
  void aPathStillPatchedIsNoCableAndNothingIsKept() throws Exception {
    Answer refused =
        new CalibrateJob(live(), new RigChoice(List.of("skew=51"), 1), false).run(site);

    assertEquals(Ending.NOT_TRUSTWORTHY, refused.ending());
    assertTrue(refused.document().text().contains("is the path still patched?"));
    assertEquals(List.of(), calibrations());
  }

  private List<Calibration> calibrations() {
    try {
      return site.data().calibrations().all();
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  private LiveRequest request(RigChoice rig) {
    return new LiveRequest(
        live(), vocal, HostReport.NONE, rig, ArrivalChoice.UNDECIDED, KeepChoice.NONE, false);
  }

  private static LiveChoice live() {
    return live(Optional.empty(), Optional.empty());
  }

  private static LiveChoice live(Optional<Integer> channel, Optional<Integer> reference) {
    DeviceChoice device =
        new DeviceChoice(
            Optional.of(BuiltInRig.NAME),
            Optional.empty(),
            Optional.empty(),
            channel,
            channel,
            reference,
            reference,
            Optional.empty(),
            Optional.empty());
    return new LiveChoice(Optional.empty(), device, StimulusChoice.NONE);
  }

  private static Map<String, Object> json(Answer answer) {
    try {
      return Json.read(Json.write(answer.document()));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static double number(Map<String, Object> json, String part, String key) {
    return ((Number) ((Map<?, ?>) json.get(part)).get(key)).doubleValue();
  }
}
