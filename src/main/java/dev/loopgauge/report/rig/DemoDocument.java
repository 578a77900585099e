package dev.loopgauge.report.rig;

import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.measured.MeasurementDocument;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * What the demo showed and where its files are.
 *
 * @param folder where its files are: the chain file, and for each measurement a recording and its
 *     document
 * @param chainFile the chain file in it
 * @param path the path that was measured
 * @param budget the budget of the chain
 * @param agreeing the measurement that keeps it
 * @param late the measurement with the host left at twice the block size
 * @param lateRecording the recording of that, the reference as its first channel
 */
public record DemoDocument(
    Path folder,
    Path chainFile,
    String path,
    BudgetDocument budget,
    MeasurementDocument agreeing,
    MeasurementDocument late,
    Path lateRecording)
    implements Document {
  @Override
  public String text() {
    int block = budget.blockSize().orElseThrow();
    return new Sheet()
        .line("An invented theatre in the built-in rig; no sound card is used.")
        .gap()
        .line("1. What the chain file predicts:")
        .gap()
        .block(budget.text())
        .gap()
        .line("2. " + path + " measured, with the host at its block of " + block + ":")
        .gap()
        .block(agreeing.text())
        .gap()
        .line("3. The same, with the host left at a block of " + 2 * block + ":")
        .gap()
        .block(late.text())
        .gap()
        .line("Chain file, recordings and documents are in " + folder + ". Go on from them:")
        .gap()
        .block(next(2 * block))
        .toString();
  }

  /** Commands on the demo's files, each on one line so that it can be copied. */
  private String next(int block) {
    String chain = word(chainFile.toString());
    String compare = " --chain " + chain + " --path " + path;
    return String.join(
        "\n",
        "  loopgauge budget " + chain + " --path " + path,
        "  loopgauge analyze --reference " + word(lateRecording.toString()) + compare,
        "  loopgauge measure --backend simulated --send 2 --return 2 --reference-send 1"
            + (" --reference-return 1" + compare + " --fault block-size=" + block + " --yes"),
        "");
  }

  /** A file name as one word of a command, quoted where a shell would take it apart. */
  private static String word(String file) {
    return file.matches("[\\w./:\\\\-]+")
        ? file
        : '"' + file.replaceAll("([\"\\\\$`])", "\\\\$1") + '"';
  }

  /** The demo by its keys. */
  private record Shown(
      String command,
      String outcome,
      Path folder,
      Path chainFile,
      String path,
      Map<String, Object> budget,
      List<Map<String, Object>> measurements) {}

  /** The record that its JSON is written from. */
  public static Class<? extends Record> keys() {
    return Shown.class;
  }

  @Override
  public Map<String, Object> json() {
    return Document.json(
        new Shown(
            "demo",
            "shown",
            folder,
            chainFile,
            path,
            budget.json(),
            List.of(agreeing.json(), late.json())));
  }
}
