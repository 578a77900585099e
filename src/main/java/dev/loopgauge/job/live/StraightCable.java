package dev.loopgauge.job.live;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBuilder;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Compensation;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.Expectation;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.Patch;
import dev.loopgauge.chain.Stage;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** A rig that is nothing but a cable, for the built-in rig to imitate. */
final class StraightCable {
  private static final String NAME = "cable";
  private static final SampleRate USUAL = new SampleRate(48_000);

  private StraightCable() {}

  /** The cable in the place of a rig, with the reference that is patched beside it. */
  static ChosenPath inPlaceOf(Profile rig) {
    ChainPath path = path();
    Chain chain =
        new ChainBuilder(NAME, rig.rate().orElse(USUAL))
            .stages(Map.of(NAME, stage()))
            .paths(Map.of(NAME, path))
            .reference(rig.patching().reference().map(StraightCable::patch))
            .build();
    return new ChosenPath(chain, path, 0);
  }

  private static Stage stage() {
    return new Stage(
        NAME,
        new Delay.Samples(0),
        new Delay.Samples(0),
        Optional.empty(),
        Optional.empty(),
        Compensation.NO,
        Optional.empty());
  }

  private static ChainPath path() {
    return new ChainPath(
        NAME,
        Listener.STREAM,
        List.of(NAME),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        NAME,
        Optional.empty(),
        false,
        Optional.empty(),
        Optional.empty(),
        Expectation.NONE);
  }

  private static Patch patch(ChannelPair pair) {
    return new Patch(pair.send(), pair.ret(), OptionalInt.empty());
  }
}
