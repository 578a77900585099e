package dev.loopgauge.screen.state;

import dev.loopgauge.verify.verdict.Judgement;
import java.util.List;
import java.util.Optional;

/**
 * All that the screen shows at one moment.
 *
 * @param rig the chain's name
 * @param settings what the rig runs at
 * @param practice whether the rig is the built-in one
 * @param sentence what matters most
 * @param sound whether there is a way to the sound, and what to try where there is none
 * @param doing what is under way
 * @param watch what is watched, or was last; null where nothing ever was
 * @param paths the paths, in the order of the chain file
 * @param patch what the last check of the patch found
 * @param mixes what is heard together
 * @param keeping the journal
 * @param options what can be chosen from
 * @param notes what in the chain file may be a mistake
 */
public record ScreenState(
    String rig,
    String settings,
    boolean practice,
    Sentence sentence,
    Optional<Trouble> sound,
    Doing doing,
    Optional<WatchState> watch,
    List<PathState> paths,
    Optional<PatchState> patch,
    List<MixState> mixes,
    Keeping keeping,
    Options options,
    List<String> notes) {
  /**
   * A sentence and how it stands.
   *
   * @param fromMs when the oldest reading was taken that it tells of, in ms since 1970; null where
   *     it tells of none
   * @param toMs the same of the newest
   */
  public record Sentence(
      Judgement standing, String text, Optional<Long> fromMs, Optional<Long> toMs) {}

  /**
   * A path.
   *
   * @param standing how it stands over all: as measured, where it was
   * @param word the same in a word or two
   * @param forecast what is predicted
   * @param reading what was measured last
   * @param past what the journal knows of it
   * @param moved what happened to it since, while it was watched; null where nothing did
   */
  public record PathState(
      String name,
      String listener,
      Judgement standing,
      String word,
      Forecast forecast,
      Optional<ReadingState> reading,
      Optional<PastState> past,
      Optional<String> moved) {}

  /**
   * A check of the patch.
   *
   * @param atMs when, in ms since 1970
   */
  public record PatchState(long atMs, Judgement standing, String text, List<String> lines) {}

  /** Paths that are heard together: how each two meet, and what to delay. */
  public record MixState(String name, List<Meeting> meetings, List<String> advice) {}

  /**
   * How two paths meet, in words.
   *
   * @param measured with what was measured of them; null where neither was
   */
  public record Meeting(String predicted, Optional<String> measured) {}

  /**
   * The journal.
   *
   * @param show the show that results are kept under; null until somebody names one
   * @param told what was kept last, or why not
   * @param failed whether that could not be kept
   * @param waiting how many readings could be kept
   * @param reports whether the journal holds something of the show
   */
  public record Keeping(
      Optional<String> show, String told, boolean failed, int waiting, boolean reports) {}

  /** What can be chosen from: block sizes and rates, stages to leave out, faults to practise on. */
  public record Options(
      List<Integer> blockSizes,
      Optional<Integer> blockSize,
      List<Integer> sampleRates,
      int sampleRate,
      List<String> stages,
      List<Fault> faults,
      String fault) {}

  /** Something that can be wrong with the built-in rig, in words. */
  public record Fault(String fault, String told) {}
}
