package dev.loopgauge.job.live;

import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.Refusals;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;

/**
 * Where to play and record. What is empty comes from a profile, then from the chain file, or is
 * left to the back end.
 *
 * @param backend its name
 * @param output the device to play to
 * @param input the device to record from
 * @param send the channel that feeds the path, counted from 1
 * @param returned the channel that the path comes back on
 * @param referenceSend the channel that a cable joins straight to {@code referenceReturn}
 * @param referenceReturn the channel that this cable comes back on
 * @param rate the sample rate
 * @param buffer the device buffer, in samples
 */
public record DeviceChoice(
    Optional<String> backend,
    Optional<String> output,
    Optional<String> input,
    Optional<Integer> send,
    Optional<Integer> returned,
    Optional<Integer> referenceSend,
    Optional<Integer> referenceReturn,
    Optional<SampleRate> rate,
    Optional<Integer> buffer) {
  private static final List<String> NAMES =
      List.of("java-sound", "jack", "drivers", BuiltInRig.NAME);

  /**
   * The back end's name.
   *
   * @throws UsageException when none was named, or there is none of that name
   */
  String backend(Optional<Profile> profile) {
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
  Optional<String> output(Optional<Profile> profile) {
    return output.or(() -> profile.flatMap(Profile::output));
  }

  /** The device to record from. */
  Optional<String> input(Optional<Profile> profile) {
    return input.or(() -> profile.flatMap(Profile::input));
  }

  /** The sample rate. */
  Optional<SampleRate> rate(Optional<Profile> profile) {
    return rate.or(() -> profile.flatMap(Profile::rate));
  }

  /** The device buffer, 0 for the back end's choice. */
  int bufferSamples(Optional<Profile> profile) {
    return buffer.or(() -> profile.map(Profile::bufferSamples)).orElse(0);
  }

  /** What to open for some channels. */
  SessionRequest request(Optional<Profile> profile, List<Integer> sends, List<Integer> returns) {
    return new SessionRequest(
        output(profile), input(profile), sends, returns, rate(profile), bufferSamples(profile));
  }

  /** What is patched where, without a chain file. */
  Patching patching(Optional<Profile> profile) {
    return patching(profile, Optional.empty());
  }

  /** What is patched where: what was chosen, over the profile, over the chain file. */
  Patching patching(Optional<Profile> profile, Optional<ChosenPath> chosen) {
    return patchingOver(known(profile, chosen));
  }

  /** What is patched where; what was left out is as known. */
  Patching patchingOver(KnownPatching known) {
    return Refusals.asUsage(
        () ->
            new Patching(
                pair("--send", send, "--return", returned, known.rig()),
                referenceOver(known.reference())));
  }

  /** Where the path is plugged in, as far as that is said. */
  Optional<ChannelPair> plug(Optional<Profile> profile, Optional<ChosenPath> chosen) {
    Optional<ChannelPair> known = known(profile, chosen).rig();
    Optional<Integer> from = send.or(() -> known.map(ChannelPair::send));
    Optional<Integer> to = returned.or(() -> known.map(ChannelPair::ret));
    return from.flatMap(out -> to.map(in -> new ChannelPair(out, in)));
  }

  /** The cable straight back: what was chosen, over the profile, over the chain file. */
  Optional<ChannelPair> reference(Optional<Profile> profile, Chain chain) {
    return referenceOver(KnownPatching.reference(profile, chain));
  }

  /** What is patched where, if that was said. */
  Optional<Patching> patchingIfSaid(Optional<Profile> profile, Optional<ChosenPath> chosen) {
    boolean said =
        send.isPresent() || returned.isPresent() || known(profile, chosen).rig().isPresent();
    return said ? Optional.of(patching(profile, chosen)) : Optional.empty();
  }

  private KnownPatching known(Optional<Profile> profile, Optional<ChosenPath> chosen) {
    KnownPatching known = KnownPatching.of(profile, chosen);
    return isUnpatchedRig() ? known.orUsual(chosen) : known;
  }

  private boolean isUnpatchedRig() {
    return backend.filter(BuiltInRig.NAME::equals).isPresent()
        && send.isEmpty()
        && returned.isEmpty();
  }

  private Optional<ChannelPair> referenceOver(Optional<ChannelPair> known) {
    return referenceSend.isPresent() || referenceReturn.isPresent()
        ? Optional.of(
            pair("--reference-send", referenceSend, "--reference-return", referenceReturn, known))
        : known;
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
            + " --reference-return 1; or write the path's patch into its chain file");
  }
}
