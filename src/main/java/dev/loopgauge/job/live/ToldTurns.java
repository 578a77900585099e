package dev.loopgauge.job.live;

import dev.loopgauge.measure.Playing;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.setup.Profile;

/**
 * Says how a measurement goes on, so that nobody waits without a sign of life.
 *
 * @param consent who is told
 * @param profile what is measured
 */
record ToldTurns(Consent consent, Profile profile) implements Playing.Listener {
  @Override
  public void heard(int turn, int turns, double peakDbfs) {
    String level =
        Double.isInfinite(peakDbfs)
            ? "is silent"
            : "peaks at " + Numbers.brief(peakDbfs, 0) + " dBFS";
    consent.tell(
        "Turn %d of %d: return %d %s."
            .formatted(turn, turns, profile.patching().rig().ret(), level));
  }

  @Override
  public void again(int turns, int lost) {
    consent.tell(
        "Sound was lost in %s; %s."
            .formatted(
                lost == 1 ? "one turn" : lost + " turns",
                turns == 1 ? "one is played again" : turns + " are played again"));
  }
}
