package dev.loopgauge.job.live;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.setup.Profile;
import java.util.Optional;

/**
 * What is known of the patch before anything is chosen: from the profile, else from the chain file.
 *
 * @param rig the path's send and return
 * @param reference the cable straight back
 */
record KnownPatching(Optional<ChannelPair> rig, Optional<ChannelPair> reference) {
  /** How the built-in rig is patched, and how a first measurement is best patched. */
  private static final ChannelPair USUAL_RIG = new ChannelPair(2, 2);

  private static final ChannelPair USUAL_REFERENCE = new ChannelPair(1, 1);

  /** What profile and chain file say of the path that is measured. */
  static KnownPatching of(Optional<Profile> profile, Optional<ChosenPath> chosen) {
    return new KnownPatching(
        profile
            .map(kept -> kept.patching().rig())
            .or(() -> chosen.flatMap(path -> ChainPatching.of(path.path()))),
        profile
            .flatMap(kept -> kept.patching().reference())
            .or(() -> chosen.flatMap(KnownPatching::reference)));
  }

  /** The cable straight back, for all paths of a chain file. */
  static Optional<ChannelPair> reference(Optional<Profile> profile, Chain chain) {
    return profile
        .flatMap(kept -> kept.patching().reference())
        .or(() -> new ChainPatching(chain).reference());
  }

  private static Optional<ChannelPair> reference(ChosenPath chosen) {
    return new ChainPatching(chosen.chain()).reference(chosen.path());
  }

  /** The same with what nobody says as the built-in rig has it. */
  KnownPatching orUsual(Optional<ChosenPath> chosen) {
    if (rig.isPresent()) {
      return this;
    }
    Optional<ChainPatching> file = chosen.map(path -> new ChainPatching(path.chain()));
    return new KnownPatching(
        Optional.of(file.map(ChainPatching::free).orElse(USUAL_RIG)),
        reference.or(
            () ->
                Optional.of(USUAL_REFERENCE)
                    .filter(pair -> file.map(known -> known.isFree(pair.ret())).orElse(true))));
  }
}
