package dev.loopgauge.screen.desk;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.job.live.RigChoice;
import dev.loopgauge.job.live.WatchRequest;
import dev.loopgauge.report.measured.ScreenDocument;
import dev.loopgauge.report.measured.ScreenDocument.ShownPathRecord;
import dev.loopgauge.screen.state.Alignments;
import dev.loopgauge.screen.state.Doing;
import dev.loopgauge.screen.state.PastState;
import dev.loopgauge.screen.state.ScreenState;
import dev.loopgauge.screen.state.ScreenState.Fault;
import dev.loopgauge.screen.state.ScreenState.Keeping;
import dev.loopgauge.screen.state.ScreenState.Options;
import dev.loopgauge.screen.state.Situation;
import dev.loopgauge.screen.state.Situation.Checked;
import dev.loopgauge.screen.state.Taken;
import dev.loopgauge.screen.state.Trouble;
import dev.loopgauge.screen.state.WatchSeen;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** All that the desk knows; each change goes to the board at once. Any thread may change it. */
final class Knowledge {
  /** Rates in common use, in Hz (AES5-2018). */
  private static final List<Integer> RATES = List.of(44_100, 48_000, 88_200, 96_000);

  private static final long SEED = 1;

  /** A watch looks each second, at first once there is a window of sound; half a look to spare. */
  private static final Duration LOOK_OVERDUE =
      Duration.ofMillis(Math.round(1_500 * WatchRequest.USUAL_STEP_SECONDS));

  private static final Duration FIRST_WINDOW =
      Duration.ofMillis(Math.round(1_000 * WatchRequest.USUAL_WINDOW_SECONDS));

  private final RigFile file;
  private final boolean builtIn;
  private final Board board = new Board();
  private final Alignments alignments = new Alignments();
  private final Map<String, Taken> readings = new LinkedHashMap<>();
  private Map<String, PastState> past = Map.of();
  private Doing doing = Doing.NOTHING;
  private WatchSeen watch = WatchSeen.NOTHING;
  private Optional<Trouble> silent = Optional.empty();
  private Optional<Checked> patch = Optional.empty();
  private Optional<String> show;
  private String kept = "";
  private boolean notKept;
  private String fault = Faults.NONE;

  /**
   * Nothing but the prediction.
   *
   * @param builtIn whether the rig is the built-in one
   * @param show the show that results are kept under
   */
  Knowledge(RigFile file, boolean builtIn, Optional<String> show) {
    this.file = file;
    this.builtIn = builtIn;
    this.show = show;
    put();
  }

  Board board() {
    return board;
  }

  /** The chain file may have changed, or what is wrong with the sound. */
  synchronized void looked(Optional<Trouble> sound) {
    silent = sound;
    put();
  }

  synchronized Optional<Trouble> silent() {
    return silent;
  }

  synchronized void doing(UnaryOperator<Doing> change) {
    doing = change.apply(doing);
    put();
  }

  /** A watch heard something, begins or ends. */
  synchronized void watching(UnaryOperator<WatchSeen> change) {
    watch = change.apply(watch);
    put();
  }

  /** Whether a watch goes on but has looked at no path for longer than it should. */
  synchronized boolean isWatchOverdue() {
    Instant due = watch.looked().orElse(watch.since().plus(FIRST_WINDOW)).plus(LOOK_OVERDUE);
    return watch.on() && Instant.now().isAfter(due);
  }

  /** A path was read. */
  synchronized void took(String path, Taken taken) {
    readings.put(path, taken);
    put();
  }

  synchronized void checked(Checked found) {
    patch = Optional.of(found);
    put();
  }

  synchronized void recalled(Map<String, PastState> known) {
    past = known;
    put();
  }

  /** A reading was kept, unless another one was taken meanwhile. */
  synchronized void kept(String path, Taken was, Taken is) {
    readings.replace(path, was, is);
    put();
  }

  /** How keeping went, in words. */
  synchronized void keeping(String words, boolean failed) {
    kept = words;
    notKept = failed;
    put();
  }

  synchronized void show(String name) {
    show = Optional.of(name);
    put();
  }

  synchronized Optional<String> show() {
    return show;
  }

  synchronized void fault(String wanted) {
    fault = wanted;
    put();
  }

  /** What is wrong with the built-in rig. */
  synchronized RigChoice rig() {
    return new RigChoice(fault.isEmpty() ? List.of() : List.of(fault), SEED);
  }

  List<String> paths() {
    return List.copyOf(file.rig().chain().paths().keySet());
  }

  synchronized Map<String, Taken> readings() {
    return Map.copyOf(readings);
  }

  /** The readings that say how things are now and aren't kept yet. */
  synchronized Map<String, Taken> waiting() {
    Map<String, Taken> waiting = new LinkedHashMap<>(readings);
    String text = file.rig().text();
    waiting.values().removeIf(one -> one.kept().isPresent() || !one.chainText().equals(text));
    return waiting;
  }

  /** How the rig stands now, as a document. */
  synchronized ScreenDocument document() {
    ScreenState state = situation().state();
    return ScreenDocument.of(
        state.sentence().standing(),
        state.sentence().text(),
        state.paths().stream()
            .map(p -> new ShownPathRecord(p.name(), Optional.of(p.standing()), p.word()))
            .toList());
  }

  private void put() {
    board.put(situation().state());
  }

  private Situation situation() {
    boolean reports = past.values().stream().anyMatch(known -> !known.rows().isEmpty());
    Keeping keeping = new Keeping(show, kept, notKept, waiting().size(), reports);
    return new Situation(
        file.rig(),
        silent,
        doing,
        watch,
        readings,
        past,
        patch,
        alignments,
        keeping,
        options(),
        builtIn);
  }

  private Options options() {
    Chain chain = file.rig().chain();
    List<Fault> faults = builtIn ? Faults.of(chain) : List.of();
    return new Options(
        BlockSizes.USUAL,
        chain.countsBlocks() ? Optional.of(chain.blockSize()) : Optional.empty(),
        RATES,
        chain.rate().hertz(),
        List.copyOf(chain.stages().keySet()),
        faults,
        fault);
  }
}
