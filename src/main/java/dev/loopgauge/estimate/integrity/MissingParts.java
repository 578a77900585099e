package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.integrity.LostSound.Heard;
import java.util.List;

/**
 * How much of a reference isn't in the return where its arrival should be. Two recordings that
 * share single sounds, drum samples or a bell, are alike at a lag where some of these meet; the
 * others are missing there. A return of the reference holds all of it, whatever else it holds.
 *
 * <p>The arrival is looked at in parts of like energy. One is missing where what is left of the
 * return is louder with the arrival taken off than with it, no arrival at any level would explain
 * much, and what the arrival's windows have in common with it adds up no further than by chance.
 */
public final class MissingParts {
  /** In how many parts of like energy the arrivals are looked at, at most. */
  private static final int PARTS = 20;

  /**
   * A part that an arrival of another level explains so much of is quieter or louder, not missing.
   */
  private static final double EXPLAINED = 0.25;

  /** In standard deviations; chance alone passes it once in 44 parts. */
  private static final double BY_CHANCE = 2;

  private double judged;
  private double missing;

  private MissingParts() {}

  /**
   * The share of the arrivals' energy that isn't in the returns, 0 to 1.
   *
   * @param returns the windows of each return, in their order
   */
  public static double share(List<List<Heard>> returns) {
    double all = 0;
    for (List<Heard> windows : returns) {
      for (Heard window : windows) {
        all += window.arrivals();
      }
    }
    MissingParts parts = new MissingParts();
    for (List<Heard> windows : returns) {
      parts.add(windows, all / PARTS);
    }
    return parts.judged == 0 ? 0 : parts.missing / parts.judged;
  }

  /** Looks at the parts of one return; a rest that is less than a part is left out. */
  private void add(List<Heard> windows, double part) {
    int from = 0;
    double arrivals = 0;
    for (int i = 0; i < windows.size(); i++) {
      arrivals += windows.get(i).arrivals();
      if (arrivals >= part && part > 0) {
        judge(windows.subList(from, i + 1));
        from = i + 1;
        arrivals = 0;
      }
    }
  }

  private void judge(List<Heard> windows) {
    Heard part = Heard.sum(windows);
    judged += part.arrivals();
    boolean explained = part.product() * part.product() > EXPLAINED * part.arrivals() * part.all();
    boolean missed = part.residual() > part.all() && !explained && !standsOut(part, windows);
    missing += missed ? part.arrivals() : 0;
  }

  /** Whether the windows' products add up as those of unrelated sound, of either sign, don't. */
  private static boolean standsOut(Heard part, List<Heard> windows) {
    double squares = 0;
    for (Heard window : windows) {
      squares += window.product() * window.product();
    }
    return part.product() > BY_CHANCE * Math.sqrt(squares);
  }
}
