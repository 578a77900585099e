package dev.loopgauge.job.live;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.report.measured.LimitRecord;
import dev.loopgauge.report.watch.Happening;
import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.verify.ChangeSearch;
import dev.loopgauge.verify.Explanation;
import dev.loopgauge.verify.KnownFacts;
import dev.loopgauge.verify.TowardsLimit;
import dev.loopgauge.verify.verdict.Aspect;
import dev.loopgauge.verify.verdict.AspectVerdict;
import dev.loopgauge.verify.watch.WatchEvent;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import dev.loopgauge.verify.watch.WholeBlocks;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Tells what happened to a path in words and figures.
 *
 * @param facts what is known of the rig for sure
 */
record WatchTelling(Chain chain, ChainPath path, KnownFacts facts) {
  private static final int MOST_CAUSES = 3;

  /**
   * What is told of an event.
   *
   * @param verdict how it leaves the path
   * @param what it in figures
   */
  record Told(WatchLine.Event event, AspectVerdict verdict, Happening what) {
    /** What is bad when it starts and good when it ends. */
    static Told of(
        WatchLine.Event event, Aspect aspect, boolean starts, Happening what, String text) {
      return new Told(event, AspectVerdict.of(aspect, !starts, text), what.saying(text));
    }
  }

  Told of(WatchEvent event) {
    boolean starts = event.phase() == Phase.STARTS;
    if (event instanceof WatchEvent.Step step) {
      return step(step, starts);
    }
    if (event instanceof WatchEvent.Drift drift) {
      return drift(drift, starts);
    }
    if (event instanceof WatchEvent.LostSound lost) {
      return lost(lost, starts);
    }
    if (event instanceof WatchEvent.Polarity polarity) {
      return Told.of(
          WatchLine.Event.POLARITY,
          Aspect.POLARITY,
          starts,
          Happening.NONE,
          polarity.inverted() ? "INVERTED: the polarity turned" : "polarity normal: it turned");
    }
    if (event instanceof WatchEvent.Level level) {
      return level(level, starts);
    }
    if (event instanceof WatchEvent.Groups groups) {
      return groups(groups, starts);
    }
    return Told.of(
        WatchLine.Event.REFERENCE,
        Aspect.DELAY,
        starts,
        Happening.NONE,
        starts
            ? "NO REFERENCE: the reference is silent while the return sounds. Is its cable in?"
            : "the reference is back");
  }

  private Told step(WatchEvent.Step step, boolean starts) {
    List<WholeBlocks> blocks = WholeBlocks.of(step.change(), chain, path);
    String size =
        "%s samples (%s ms)"
            .formatted(
                Numbers.signedPlusMinus(step.change().samples(), step.uncertaintySamples(), 2),
                Numbers.signed(step.change().ms(), 2));
    String text =
        (starts ? "JUMPED " : "back by ")
            + size
            + ": "
            + Numbers.plain(step.from().samples(), 2)
            + " → "
            + Numbers.plain(step.to().samples(), 2)
            + (blocks.isEmpty() ? "" : ", " + words(blocks.get(0)));
    Happening.StepPart part =
        new Happening.StepPart(
            Written.samples(step.from().samples()),
            Written.samples(step.to().samples()),
            Written.samples(step.change().samples(), step.uncertaintySamples()),
            Written.ms(step.change().ms()),
            Written.uncertainSamples(step.uncertaintySamples()),
            Numbers.roundedUp(step.withinSeconds(), 3),
            blocks.stream()
                .map(b -> new Happening.BlocksPart(b.host(), b.blockSize(), b.blocks()))
                .toList());
    return Told.of(
        WatchLine.Event.STEP,
        Aspect.DELAY,
        starts,
        new Happening.Builder().step(part, starts ? causes(step) : List.of()).build(),
        text);
  }

  private static String words(WholeBlocks blocks) {
    int count = Math.abs(blocks.blocks());
    return (count == 1 ? "one block" : count + " blocks")
        + " of "
        + blocks.blockSize()
        + blocks.host().map(host -> " of " + host).orElse("")
        + (blocks.blocks() > 0 ? " more" : " less");
  }

  private List<Happening.Cause> causes(WatchEvent.Step step) {
    List<Happening.Cause> causes = new ArrayList<>();
    List<Explanation> likely =
        ChangeSearch.likely(chain, path, step.change(), step.uncertaintySamples(), facts);
    for (Explanation one : likely.subList(0, Math.min(MOST_CAUSES, likely.size()))) {
      causes.add(new Happening.Cause(one.cause(), one.text()));
    }
    return causes;
  }

  private Told drift(WatchEvent.Drift drift, boolean starts) {
    double ppm = drift.drift().ppm();
    double perHour = ppm * 3.6;
    Optional<TowardsLimit> limit =
        starts ? TowardsLimit.of(drift.delay(), ppm, chain, path) : Optional.empty();
    String size =
        "%s ppm, %s ms an hour"
            .formatted(
                Numbers.signedPlusMinus(ppm, drift.drift().uncertaintyPpm(), 2),
                Numbers.signed(perHour, 1));
    return Told.of(
        WatchLine.Event.DRIFT,
        Aspect.CLOCKS,
        starts,
        new Happening.Builder()
            .drift(
                Numbers.rounded(ppm, 4),
                Numbers.roundedUp(drift.drift().uncertaintyPpm(), 4),
                Numbers.rounded(perHour, 4),
                limit.map(LimitRecord::of))
            .build(),
        starts
            ? "NOT LOCKED " + size + ": the clocks drift apart"
            : "the drift is over: " + size + " is left");
  }

  private static Told lost(WatchEvent.LostSound lost, boolean starts) {
    String time =
        lost.ms().isPresent() ? Numbers.plain(lost.ms().getAsDouble(), 0) + " ms" : "the sound";
    return Told.of(
        WatchLine.Event.LOST_SOUND,
        Aspect.LOST_SOUND,
        starts,
        new Happening.Builder().lostMs(Written.ms(lost.ms())).build(),
        starts ? "SOUND LOST: " + time + " did not come back" : "sound is back after " + time);
  }

  /** A fader may be moved as one likes: bad is only what a file expects otherwise. */
  private Told level(WatchEvent.Level level, boolean starts) {
    String size = Numbers.signedPlusMinus(level.changeDb(), level.uncertaintyDb(), 1) + " dB";
    String text = starts ? "LEVEL " + size + ": a fader or gain moved" : "level back by " + size;
    Happening what =
        new Happening.Builder()
            .change(Written.db(level.changeDb()), Written.uncertainDb(level.uncertaintyDb()))
            .build();
    return new Told(
        WatchLine.Event.LEVEL,
        path.expected().level().isPresent()
            ? AspectVerdict.of(Aspect.LEVEL, !starts, text)
            : AspectVerdict.notJudged(Aspect.LEVEL, text),
        what.saying(text));
  }

  private static Told groups(WatchEvent.Groups groups, boolean starts) {
    return Told.of(
        WatchLine.Event.GROUPS,
        Aspect.DELAY,
        starts,
        new Happening.Builder().other(Written.samples(groups.other().samples())).build(),
        starts
            ? "TWO DELAYS: it jumps to and fro between %s and %s samples"
                .formatted(
                    Numbers.plain(groups.usual().samples(), 2),
                    Numbers.plain(groups.other().samples(), 2))
            : "the delay stays: " + Numbers.plain(groups.usual().samples(), 2) + " samples");
  }
}
