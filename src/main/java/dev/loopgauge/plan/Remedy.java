package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Host;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.List;

/** What brings a path back within a limit that it breaks. */
public enum Remedy {
  /** The path that is heard first lacks delay. */
  DELAY_EARLIER_PATH,
  /** The picture can wait for its sound. */
  DELAY_PICTURE,
  /** The path can be fed from before the host. */
  BYPASS_HOST,
  /** Some of its stages can go. */
  REMOVE_STAGES,
  /** Its air alone takes too long. */
  MOVE_NEARER;

  /** What may be tried against a breach, the first first; never stages where air alone is over. */
  public static List<Remedy> of(PlanRequest request, Breach breach) {
    if (breach.earlier().isPresent()) {
      return List.of(DELAY_EARLIER_PATH);
    }
    Chain chain = breach.setting().of(request.chain());
    ChainPath path = chain.path(breach.path());
    boolean isPicture = breach.kind() == Breach.Kind.PICTURE;
    if (!isPicture && path.listener() != Listener.HOUSE && airMs(chain, path) > breach.limitMs()) {
      return List.of(MOVE_NEARER);
    }
    List<Remedy> remedies = new ArrayList<>();
    if (isPicture) {
      remedies.add(DELAY_PICTURE);
    }
    remedies.add(REMOVE_STAGES);
    if (!request.mayLeaveHost().contains(path.name()) && !Host.on(chain, path).inside().isEmpty()) {
      remedies.add(BYPASS_HOST);
    }
    return remedies;
  }

  /** The air that a performer hears through, at the furthest of its positions. */
  private static double airMs(Chain chain, ChainPath path) {
    double own =
        path.stages().stream()
            .map(chain.stages()::get)
            .filter(stage -> stage.delay().isAir())
            .mapToDouble(stage -> chain.delay(stage).ms())
            .sum();
    double furthest =
        path.loudspeaker().stream()
            .flatMap(
                loudspeaker ->
                    loudspeaker.positions().stream()
                        .map(chain.positions()::get)
                        .map(seat -> seat.throwOf(loudspeaker.name(), chain.conditions())))
            .mapToDouble(Latency::ms)
            .max()
            .orElse(0);
    return own + furthest;
  }
}
