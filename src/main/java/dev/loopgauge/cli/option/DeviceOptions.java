package dev.loopgauge.cli.option;

import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.cli.terminal.Refusals;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that say where to play and record. What is left out comes from a profile. */
public final class DeviceOptions {
  private static final List<String> NAMES = List.of("java-sound", "jack", LiveOptions.SIMULATED);

  /** How the built-in rig is patched, and how a first measurement is best patched. */
  private static final Patching USUAL =
      new Patching(new ChannelPair(2, 2), Optional.of(new ChannelPair(1, 1)));

  @Option(
      names = "--backend",
      paramLabel = "NAME",
      description = "java-sound, jack or simulated; `devices` lists what can be used.")
  private Optional<String> backend = Optional.empty();

  @Option(
      names = "--output",
      paramLabel = "NAME",
      description = "The device to play to; left out, the usual one.")
  private Optional<String> output = Optional.empty();

  @Option(
      names = "--input",
      paramLabel = "NAME",
      description = "The device to record from; left out, the usual one.")
  private Optional<String> input = Optional.empty();

  @Option(
      names = "--send",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "The channel that feeds the path, counted from 1.")
  private Optional<Integer> send = Optional.empty();

  @Option(
      names = "--return",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "The channel that the path comes back on.")
  private Optional<Integer> returned = Optional.empty();

  @Option(
      names = "--reference-send",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "The channel that a cable joins straight to --reference-return.")
  private Optional<Integer> referenceSend = Optional.empty();

  @Option(
      names = "--reference-return",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "The channel that this cable comes back on.")
  private Optional<Integer> referenceReturn = Optional.empty();

  @Option(
      names = "--sample-rate",
      paramLabel = "HZ",
      converter = Converters.Rate.class,
      description = "The sample rate; left out, the device's, 48000 where it has a choice.")
  private Optional<SampleRate> rate = Optional.empty();

  @Option(
      names = "--buffer",
      paramLabel = "SAMPLES",
      converter = Converters.Count.class,
      description = "The device buffer; left out, the back end's choice.")
  private Optional<Integer> buffer = Optional.empty();

  /**
   * The back end's name.
   *
   * @throws UsageException when none was named, or there is none of that name
   */
  public String backend(Optional<Profile> profile) {
    String name =
        backend
            .or(() -> profile.map(Profile::backend))
            .orElseThrow(
                () ->
                    new UsageException(
                        "expected --backend or --profile, found neither",
                        "`loopgauge devices` lists what can be used, with a command to copy"));
    if (!NAMES.contains(name)) {
      throw new UsageException(
          "expected a back end, found '" + name + "'", "they are " + String.join(", ", NAMES));
    }
    return name;
  }

  /** The device to play to. */
  public Optional<String> output(Optional<Profile> profile) {
    return output.or(() -> profile.flatMap(Profile::output));
  }

  /** The device to record from. */
  public Optional<String> input(Optional<Profile> profile) {
    return input.or(() -> profile.flatMap(Profile::input));
  }

  /** The sample rate. */
  public Optional<SampleRate> rate(Optional<Profile> profile) {
    return rate.or(() -> profile.flatMap(Profile::rate));
  }

  /** The device buffer, 0 for the back end's choice. */
  public int bufferSamples(Optional<Profile> profile) {
    return buffer.or(() -> profile.map(Profile::bufferSamples)).orElse(0);
  }

  /** What to open for some channels. */
  public SessionRequest request(
      Optional<Profile> profile, List<Integer> sends, List<Integer> returns) {
    return new SessionRequest(
        output(profile), input(profile), sends, returns, rate(profile), bufferSamples(profile));
  }

  /** What is patched where. */
  public Patching patching(Optional<Profile> profile) {
    return patchingOver(
        profile
            .map(Profile::patching)
            .or(() -> isUnpatchedRig() ? Optional.of(USUAL) : Optional.empty()));
  }

  /** What is patched where; what was left out is as in {@code known}. */
  public Patching patchingOver(Optional<Patching> known) {
    Optional<ChannelPair> rig = known.map(Patching::rig);
    Optional<ChannelPair> reference = known.flatMap(Patching::reference);
    return Refusals.asUsage(
        () ->
            new Patching(
                pair("--send", send, "--return", returned, rig),
                referenceSend.isPresent() || referenceReturn.isPresent()
                    ? Optional.of(referencePair(reference))
                    : reference));
  }

  /** What is patched where, if that was said. */
  public Optional<Patching> patchingIfSaid(Optional<Profile> profile) {
    boolean said = profile.isPresent() || send.isPresent() || returned.isPresent();
    return said || isUnpatchedRig() ? Optional.of(patching(profile)) : Optional.empty();
  }

  private boolean isUnpatchedRig() {
    return backend.filter(LiveOptions.SIMULATED::equals).isPresent()
        && send.isEmpty()
        && returned.isEmpty();
  }

  private ChannelPair referencePair(Optional<ChannelPair> known) {
    return pair("--reference-send", referenceSend, "--reference-return", referenceReturn, known);
  }

  private static ChannelPair pair(
      String sendOption,
      Optional<Integer> send,
      String returnOption,
      Optional<Integer> returned,
      Optional<ChannelPair> known) {
    return new ChannelPair(
        send.or(() -> known.map(ChannelPair::send)).orElseThrow(() -> missing(sendOption)),
        returned.or(() -> known.map(ChannelPair::ret)).orElseThrow(() -> missing(returnOption)));
  }

  private static UsageException missing(String option) {
    return new UsageException(
        "expected " + option + ", found none",
        "patched as README shows, it is --send 2 --return 2 --reference-send 1"
            + " --reference-return 1; --check-patch finds out");
  }
}
