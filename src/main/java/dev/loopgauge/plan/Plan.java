package dev.loopgauge.plan;

import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The settings that keep every listener within limits.
 *
 * <p>All combinations of block size, sample rate and routing count. Of those that share a setting
 * only the best is listed: that with sound closest to picture, and then with the fewest paths taken
 * from before the host.
 *
 * @param choices one for each setting that can be used: the largest block first, then the one with
 *     sound closest to picture, then the one with the most paths through the host, then the chain's
 *     own sample rate, then the lowest
 * @param limit what breaks first when the first choice's block goes one step up; without a choice,
 *     what is furthest over its limit at the setting that comes nearest
 * @param droppedOut the settings left out because sound was seen to drop out at them
 */
public record Plan(List<Choice> choices, Optional<Breach> limit, List<Setting> droppedOut) {
  /** Copies the lists. */
  public Plan {
    choices = List.copyOf(choices);
    droppedOut = List.copyOf(droppedOut);
  }

  /** Plans a rig. */
  public static Plan of(PlanRequest request) {
    List<Setting> droppedOut = settings(request, setting -> droppedOut(request, setting));
    List<Trial> trials =
        settings(request, setting -> !droppedOut.contains(setting)).stream()
            .map(setting -> Trial.of(request, setting))
            .toList();
    List<Choice> choices =
        trials.stream()
            .flatMap(trial -> trial.choice().stream())
            .sorted(bestFirst(request.chain().rate()))
            .toList();
    return new Plan(
        choices, choices.isEmpty() ? nearest(trials) : next(request, choices.get(0)), droppedOut);
  }

  private static List<Setting> settings(PlanRequest request, Predicate<Setting> wanted) {
    List<Setting> settings = new ArrayList<>();
    for (SampleRate rate : request.rates()) {
      for (int blockSize : request.blockSizes()) {
        settings.add(new Setting(blockSize, rate));
      }
    }
    return settings.stream().filter(wanted).toList();
  }

  private static boolean droppedOut(PlanRequest request, Setting setting) {
    Map<Setting, Load> loads = request.loads();
    return loads.containsKey(setting) && loads.get(setting).droppedOut();
  }

  private static Comparator<Choice> bestFirst(SampleRate own) {
    return Comparator.comparingInt((Choice choice) -> -choice.setting().blockSize())
        .thenComparingDouble(Choice::pictureApartMs)
        .thenComparingInt(choice -> choice.beforeHost().size())
        .thenComparing(choice -> !choice.setting().rate().equals(own))
        .thenComparingInt(choice -> choice.setting().rate().hertz());
  }

  private static Optional<Breach> nearest(List<Trial> trials) {
    return trials.stream()
        .flatMap(trial -> trial.worstBreach().stream())
        .min(Comparator.comparingDouble(Breach::overMs));
  }

  private static Optional<Breach> next(PlanRequest request, Choice choice) {
    Setting setting = choice.setting();
    return request.blockSizes().stream()
        .filter(size -> size > setting.blockSize())
        .findFirst()
        .flatMap(
            size ->
                Trial.of(request, new Setting(size, setting.rate())).breaches().stream()
                    .min(Comparator.comparingDouble(breach -> share(choice, breach))));
  }

  /** How far of the step to the larger block a limit holds: 0 to 1, since delays grow evenly. */
  private static double share(Choice now, Breach then) {
    double before =
        now.feeds().stream()
            .filter(feed -> feed.path().equals(then.path()))
            .mapToDouble(feed -> reachedMs(feed, then.kind()))
            .findFirst()
            .orElseThrow();
    return (then.limitMs() - before) / (then.reachedMs() - before);
  }

  private static double reachedMs(Feed feed, Breach.Kind kind) {
    return switch (kind) {
      case LISTENER -> feed.judged().ms();
      case PICTURE -> -feed.picture().orElseThrow().soundEarly().ms();
    };
  }
}
