package dev.loopgauge.cli.demo;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.WholeFile;
import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavEncoding;
import dev.loopgauge.capture.file.WavWriter;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.job.live.BuiltInRig;
import dev.loopgauge.job.live.ImitatedRig;
import dev.loopgauge.job.live.KeptSession;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.LiveMeasurement;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.rig.DemoDocument;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.StimulusKind;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * The main job in the built-in rig: a budget, a measurement that agrees, and one with the host left
 * at twice the block size.
 */
public final class Demo {
  private static final String CHAIN = "lantern-theatre.yaml";
  private static final String PATH = "vocal-house";
  private static final double ALLOW_SAMPLES = 1;
  private static final long SEED = 1;

  private static final String NOISE = "noise=-75";

  private static final MeasurementPlan PLAN =
      new MeasurementPlan(new PlayedStimulus(StimulusKind.SWEEP, 1, -20), 3, 0.2);

  /** The rig's card: send 1 by cable to return 1, send 2 through the rig to return 2. */
  private static final Patching PATCHING =
      new Patching(new ChannelPair(2, 2), Optional.of(new ChannelPair(1, 1)));

  private final Path folder;
  private final BuiltInRig rig;

  /** A demo that measures the built-in rig and writes its files into an empty folder. */
  public Demo(Path folder, BuiltInRig rig) {
    this.folder = folder;
    this.rig = rig;
  }

  /**
   * Does it all.
   *
   * @throws IOException when a file can't be written
   * @throws AudioFileException when a recording can't be written
   */
  public DemoDocument run()
      throws IOException, AudioFileException, CaptureException, ChainFormatException {
    Path chainFile = folder.resolve(CHAIN);
    try (InputStream shipped = Demo.class.getResourceAsStream("/dev/loopgauge/demo/" + CHAIN)) {
      WholeFile.at(chainFile).create(shipped::transferTo);
    }
    Chain chain = ChainFile.read(chainFile);
    int twice = 2 * chain.blockSize();
    BudgetDocument budget =
        BudgetDocument.of(
            chain,
            chain.paths().values().stream().map(path -> ChainBudget.of(chain, path)).toList(),
            PictureRule.EBU_R37);
    write("budget", budget);
    return new DemoDocument(
        folder,
        chainFile,
        PATH,
        budget,
        measured("as-budgeted", chain, NOISE),
        measured("block-" + twice, chain, NOISE, "block-size=" + twice),
        folder.resolve("block-" + twice + ".wav"));
  }

  private MeasurementDocument measured(String name, Chain chain, String... faults)
      throws IOException, AudioFileException, CaptureException {
    ChainPath path = chain.path(PATH);
    AudioBackend backend =
        rig.imitating(
            new ImitatedRig(chain, Optional.of(path), Optional.empty(), List.of(faults), SEED));
    SessionRequest request =
        new SessionRequest(
            Optional.empty(),
            Optional.empty(),
            PATCHING.sends(),
            PATCHING.returns(),
            Optional.of(chain.rate()),
            0);
    try (KeptSession session = new KeptSession(backend.open(request))) {
      Estimate estimate = new LiveMeasurement(session, PATCHING, PLAN).referenced();
      keep(name, session.captures().get(0));
      ChosenPath chosen = new ChosenPath(chain, path, ALLOW_SAMPLES);
      MeasurementDocument document =
          MeasurementDocument.of("measure", chosen.judge(estimate, Optional.empty()), List.of());
      write(name, document);
      return document;
    }
  }

  /** Reference first, so that {@code analyze} needs no channels. */
  private void keep(String name, Capture capture) throws AudioFileException {
    int rig = PATCHING.returns().indexOf(PATCHING.rig().ret());
    WavWriter.write(
        folder.resolve(name + ".wav"),
        List.of(capture.returns().get(1 - rig), capture.returns().get(rig)),
        WavEncoding.PCM_24);
  }

  private void write(String name, Document document) {
    TextFile.writeNew(folder.resolve(name + ".json"), Json.write(document) + "\n");
  }
}
