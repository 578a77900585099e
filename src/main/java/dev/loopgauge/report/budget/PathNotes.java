package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Guidance;
import dev.loopgauge.chain.Instrument;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.plan.Comb;
import dev.loopgauge.plan.DirectSound;
import dev.loopgauge.plan.EarlierFeed;
import dev.loopgauge.plan.OwnVoice;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What there is to say of a path beside its limits.
 *
 * @param budget the path
 * @param earlier what to do where an in-ear path is over
 * @param instrument who plays on it
 * @param guidance what such players found
 * @param ownVoice the comb of a voice heard through bone and, later, in the ears
 * @param talker how talkers find their own voice back, where the path returns it
 * @param direct the same sound straight through the air
 */
record PathNotes(
    PathBudget budget,
    Optional<EarlierFeed> earlier,
    Optional<Instrument> instrument,
    Optional<Guidance> guidance,
    Optional<Comb> ownVoice,
    Optional<OwnVoice> talker,
    Optional<DirectSound> direct) {
  /** Of a path of the chain. */
  static PathNotes of(Chain chain, PathBudget budget) {
    ChainPath path = chain.path(budget.name());
    double ms = budget.delay().ms();
    return new PathNotes(
        budget,
        EarlierFeed.of(chain, budget),
        path.instrument(),
        path.instrument().flatMap(played -> played.guidance(path.listener())),
        isSung(path) ? Optional.of(new Comb(ms, 0)) : Optional.empty(),
        path.returnsToTalker() ? Optional.of(OwnVoice.at(ms)) : Optional.empty(),
        DirectSound.beside(chain, budget));
  }

  /** A path of no stated instrument may be a singer's too; one that returns is told of as such. */
  private static boolean isSung(ChainPath path) {
    return path.listener() == Listener.IN_EAR
        && !path.returnsToTalker()
        && path.instrument().orElse(Instrument.VOICE) == Instrument.VOICE;
  }

  /** Tells them, a line each. */
  void tell(Sheet sheet) {
    for (String note : notes()) {
      sheet.line(budget.name() + ": " + note);
    }
  }

  private List<String> notes() {
    List<String> notes = new ArrayList<>();
    earlier.ifPresent(feed -> notes.add(advice(feed)));
    talker.ifPresent(voice -> notes.add(returned(voice)));
    guidance.ifPresent(row -> notes.add(guided(row)));
    ownVoice.filter(comb -> comb.delayMs() > 0).ifPresent(comb -> notes.add(throughBone(comb)));
    direct.ifPresent(sound -> notes.add(direct(sound)));
    return notes;
  }

  private static String advice(EarlierFeed feed) {
    return "feed the in-ear mix from before the host (a second patch of the same input): "
        + (ms(feed.delay().ms()) + " instead of " + ms(feed.path().delay().ms()) + ", ")
        + Standings.of(feed.path().limits(), feed.delay())
        + feed.spared().stream()
            .map(StageDelay::name)
            .collect(Collectors.joining(", ", "; it leaves out ", "."));
  }

  private String returned(OwnVoice voice) {
    return "comes back to its own talker, a round trip of "
        + (ms(budget.delay().ms()) + ": " + voice.words() + ", " + OwnVoice.SOURCE + ".")
        + (voice == OwnVoice.UNNOTICED ? "" : " Keep the own voice out of it (mix-minus).");
  }

  private String guided(Guidance row) {
    double ms = budget.delay().ms();
    return ms(ms)
        + (" is " + row.rating(ms).label())
        + (" for " + instrument.map(Instrument::label).orElse("") + " (good to ")
        + (Numbers.brief(row.goodMs(), 1) + " ms, fair to " + Numbers.brief(row.fairMs(), 1))
        + (" ms; " + Guidance.SOURCE + ").");
  }

  private String throughBone(Comb comb) {
    return (instrument.isPresent() ? "the own" : "a singer's own")
        + (" voice is heard by bone, then in the ears: " + Combs.nulls(comb) + ".");
  }

  private String direct(DirectSound sound) {
    String path = budget.listener() == Listener.HOUSE ? "the loudspeakers" : "this path";
    String order = sound.pathLater().samples() < 0 ? " earlier: " : " later: ";
    return ("direct sound after " + ms(sound.direct().ms()) + ", " + path + " ")
        + (ms(sound.overlap().delayMs()) + order)
        + (Combs.effect(sound.overlap().effect()) + ", " + sound.overlap().reason() + ".");
  }

  private static String ms(double ms) {
    return Numbers.plain(ms, 3) + " ms";
  }
}
