package dev.loopgauge.report.watch;

import dev.loopgauge.report.form.Inlined;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.measured.Keepable;
import dev.loopgauge.report.measured.KeptRecord;
import dev.loopgauge.verify.watch.PathStatus;
import dev.loopgauge.verify.watch.WatchEvent;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;

/**
 * One line of a watch: how a path is doing, or what happened to it.
 *
 * @param outcome whether a delay that can be trusted is told with it
 * @param phase whether an event starts or ends; left out of states
 * @param at when, by the computer's clock, with its offset from UTC
 * @param atSeconds the same from the start of the watch
 * @param path the path; left out where all are meant
 * @param state what the path's last window came to; left out of events
 * @param ageSeconds how long ago a delay was last read, where none is read now
 * @param read the delay that is read now
 * @param what what an event is about
 * @param verdict how the event leaves the path
 * @param kept whether it was kept in the journal, where that was asked
 */
public record WatchLine(
    String command,
    Outcome outcome,
    Event event,
    Optional<WatchEvent.Phase> phase,
    String at,
    BigDecimal atSeconds,
    Optional<String> path,
    Optional<PathStatus.State> state,
    Optional<BigDecimal> ageSeconds,
    @Inlined WatchedDelay read,
    @Inlined Happening what,
    Optional<VerdictRecord> verdict,
    Optional<KeptRecord> kept)
    implements Keepable, Sparse {
  /** What a line tells. */
  public enum Event {
    /** How a path is doing. */
    STATE,
    /** The delay jumped. */
    STEP,
    /** The delay slides. */
    DRIFT,
    /** Sound did not come back. */
    LOST_SOUND,
    /** The polarity changed. */
    POLARITY,
    /** The level changed. */
    LEVEL,
    /** The delay jumps to and fro. */
    GROUPS,
    /** The reference died. */
    REFERENCE,
    /** The watch is over. */
    SUMMARY
  }

  @Override
  public WatchLine withKept(KeptRecord now) {
    return new WatchLine(
        command,
        outcome,
        event,
        phase,
        at,
        atSeconds,
        path,
        state,
        ageSeconds,
        read,
        what,
        verdict,
        Optional.of(now));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("phase", "path", "state", "ageSeconds", "verdict", "kept");
  }

  /** The time of day, as on a clock on the wall: 21:14:03. */
  public String clock() {
    return at.substring(at.indexOf('T') + 1, at.indexOf('T') + 9);
  }

  /** Whether an event starts. */
  public boolean starts() {
    return phase.equals(Optional.of(WatchEvent.Phase.STARTS));
  }

  /** The event in a few words, for a row. */
  public String brief() {
    if (!starts()) {
      return "steady again since " + clock();
    }
    String words =
        switch (event) {
          case STEP ->
              "JUMPED "
                  + Numbers.signed(what.step().orElseThrow().changeSamples().doubleValue(), 2);
          case DRIFT ->
              "NOT LOCKED "
                  + Numbers.signed(what.clockDriftPpm().orElseThrow().doubleValue(), 1)
                  + " ppm";
          case LOST_SOUND -> "SOUND LOST";
          case POLARITY -> "INVERTED";
          case LEVEL ->
              "LEVEL " + Numbers.signed(what.changeDb().orElseThrow().doubleValue(), 1) + " dB";
          case GROUPS -> "TWO DELAYS";
          case REFERENCE -> "NO REFERENCE";
          case STATE, SUMMARY -> "";
        };
    return words + " at " + clock();
  }

  /** The event in a line or two; a state is {@link WatchRow}'s. */
  @Override
  public String text() {
    Sheet sheet = new Sheet();
    sheet.line(clock() + "  " + path.map(name -> name + "  ").orElse("") + what.text().orElse(""));
    if (!what.causes().isEmpty()) {
      sheet.row("likely", what.causes().get(0).text());
    }
    what.towardsLimit().ifPresent(limit -> sheet.row("limit", limit.text()));
    return sheet.toString();
  }
}
