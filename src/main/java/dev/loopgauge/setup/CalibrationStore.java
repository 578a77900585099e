package dev.loopgauge.setup;

import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.Patching;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Calibrations, one for each back end, device, rate, block size and pair of channels, and skews,
 * one for each back end, device, rate and two pairs of channels.
 *
 * @param folder where they are; it need not exist yet
 */
public record CalibrationStore(Path folder) {
  private static final String SUFFIX = ".yaml";

  /** What there is for a session. */
  public sealed interface Lookup {
    /** A calibration that holds. */
    record Holds(Calibration calibration) implements Lookup {}

    /** None that holds, and why not, one sentence. */
    record Refused(String reason) implements Lookup {}
  }

  /**
   * Looks for a calibration that holds.
   *
   * @param session what was opened
   * @param channels the send and return to be measured
   * @throws SetupException when a file can't be used
   */
  public Lookup find(SessionInfo session, ChannelPair channels) throws SetupException {
    return choose(all(), session, channels);
  }

  /**
   * Chooses among calibrations.
   *
   * @param made those there are, the latest first
   * @param session what was opened
   * @param channels the send and return to be measured
   */
  public static Lookup choose(List<Calibration> made, SessionInfo session, ChannelPair channels) {
    List<Calibration> ofCards = made.stream().filter(one -> one.reference().isEmpty()).toList();
    Optional<Calibration> holds =
        ofCards.stream().filter(one -> one.differsFrom(session, channels).isEmpty()).findFirst();
    if (holds.isPresent()) {
      return new Lookup.Holds(holds.get());
    }
    return new Lookup.Refused(
        ofCards.stream()
            .findFirst()
            .flatMap(
                latest ->
                    latest
                        .differsFrom(session, channels)
                        .map(how -> "the calibration of " + latest.measuredAt() + " was " + how))
            .orElse("no calibration is kept"));
  }

  /**
   * Chooses the skew of what is patched; empty where none of them is that.
   *
   * @param made those there are, the latest first
   * @param session what was opened
   */
  public static Optional<Calibration> skew(
      List<Calibration> made, SessionInfo session, Patching patching) {
    return made.stream().filter(one -> one.isSkewOf(patching, session)).findFirst();
  }

  /**
   * All calibrations, the latest first.
   *
   * @throws SetupException when a file can't be used
   */
  public List<Calibration> all() throws SetupException {
    List<Calibration> all = new ArrayList<>();
    for (Path file : files()) {
      all.add(CalibrationFormat.read(new SettingsFile(file).read()));
    }
    all.sort(Comparator.comparing(Calibration::measuredAt).reversed());
    return List.copyOf(all);
  }

  /**
   * Keeps a calibration, in place of an older one for the same.
   *
   * @return its file
   * @throws SetupException when it can't be written
   */
  public Path save(Calibration calibration) throws SetupException {
    Path file = folder.resolve(name(calibration) + SUFFIX);
    new SettingsFile(file).write(CalibrationFormat.write(calibration));
    return file;
  }

  private List<Path> files() throws SetupException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(SUFFIX)).toList();
    } catch (IOException e) {
      throw new SetupException(
          folder + " can't be read: " + FileTrouble.reason(e), "check the folder's rights");
    }
  }

  /** For people to recognise; the hash keeps apart what only differs in characters left out. */
  private static String name(Calibration made) {
    String devices = made.output() + "/" + made.input();
    return String.join(
        "-",
        made.backend(),
        devices.replaceAll("[^A-Za-z0-9]+", "_"),
        Integer.toHexString(devices.hashCode()),
        made.rate().hertz() + "Hz",
        made.reference().map(CalibrationStore::beside).orElse(made.bufferSamples() + "smp"),
        "send" + made.cable().send(),
        "return" + made.cable().ret());
  }

  private static String beside(ChannelPair reference) {
    return "beside-send" + reference.send() + "-return" + reference.ret();
  }
}
