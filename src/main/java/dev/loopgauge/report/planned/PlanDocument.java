package dev.loopgauge.report.planned;

import dev.loopgauge.plan.Breach;
import dev.loopgauge.plan.Choice;
import dev.loopgauge.plan.Feed;
import dev.loopgauge.plan.PictureBlock;
import dev.loopgauge.plan.PictureBlocks;
import dev.loopgauge.plan.Plan;
import dev.loopgauge.plan.PlanRequest;
import dev.loopgauge.plan.Remedy;
import dev.loopgauge.plan.Routing;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.signal.SampleRate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The settings that keep every listener of a rig within limits.
 *
 * @param choices the settings, the best first
 * @param limit what breaks next; null where nothing does
 * @param noLimit why nothing breaks, where it doesn't
 * @param sameClock the best setting that leaves the sample rate alone, where the best of all
 *     doesn't
 * @param droppedOut settings at which sound dropped out when it was measured
 */
public record PlanDocument(
    String command,
    String outcome,
    List<ChoiceRecord> choices,
    Optional<BreachRecord> limit,
    Optional<String> noLimit,
    Optional<SettingRecord> sameClock,
    List<SettingRecord> droppedOut)
    implements Document, Sparse {
  /**
   * The document of a plan.
   *
   * @param request what could be chosen from
   * @param plan what came of it
   */
  public static PlanDocument of(PlanRequest request, Plan plan) {
    List<Choice> choices = plan.choices();
    Optional<Choice> best = choices.stream().findFirst();
    return new PlanDocument(
        "plan",
        choices.isEmpty() ? "nothing-fits" : "planned",
        choices(request, choices),
        plan.limit().map(breach -> breach(request, breach, choices.isEmpty())),
        best.filter(choice -> plan.limit().isEmpty()).map(choice -> noLimit(request, choice)),
        best.flatMap(choice -> sameClock(request.chain().rate(), choice, choices)),
        plan.droppedOut().stream().map(SettingRecord::of).toList());
  }

  private static List<ChoiceRecord> choices(PlanRequest request, List<Choice> choices) {
    Map<SampleRate, PictureBlocks> blocks = new HashMap<>();
    return choices.stream()
        .map(
            choice ->
                choice(
                    request,
                    choice,
                    blocks.computeIfAbsent(choice.setting().rate(), rate -> blocks(request, rate))))
        .toList();
  }

  private static PictureBlocks blocks(PlanRequest request, SampleRate rate) {
    return PictureBlocks.of(
        request.chain().withSampleRate(rate),
        request.delays(),
        request.rule(),
        request.blockSizes());
  }

  private static ChoiceRecord choice(PlanRequest request, Choice choice, PictureBlocks blocks) {
    return ChoiceRecord.of(
        choice,
        request.chain(),
        Optional.ofNullable(request.loads().get(choice.setting())),
        choice.feeds().stream()
            .map(feed -> SettingPathRecord.of(feed, closest(feed, blocks)))
            .toList());
  }

  /** The block size that would bring the sound of a path closest to its picture. */
  private static Optional<PictureBlock> closest(Feed feed, PictureBlocks blocks) {
    return feed.routing() == Routing.BEFORE_HOST ? Optional.empty() : blocks.closest(feed.path());
  }

  private static BreachRecord breach(PlanRequest request, Breach breach, boolean nothingFits) {
    return BreachRecord.of(
        breach, nothingFits ? Optional.of(remedy(request, breach)) : Optional.empty());
  }

  private static String remedy(PlanRequest request, Breach breach) {
    return Remedy.of(request, breach).stream()
        .map(remedy -> words(remedy, breach))
        .collect(Collectors.joining(", or "));
  }

  private static String words(Remedy remedy, Breach breach) {
    String path = breach.path();
    return switch (remedy) {
      case DELAY_EARLIER_PATH -> "delay " + breach.earlier().orElseThrow() + ", heard first there";
      case DELAY_PICTURE -> "delay the picture";
      case BYPASS_HOST -> "let " + path + " bypass the host: --may-leave-host " + path;
      case REMOVE_STAGES -> "remove stages from " + path;
      case MOVE_NEARER -> "move the loudspeaker nearer: its air alone is over the limit";
    };
  }

  private static String noLimit(PlanRequest request, Choice chosen) {
    return request.blockSizes().stream().anyMatch(size -> size > chosen.setting().blockSize())
        ? "no limit breaks, but sound dropped out there"
        : "no larger block was asked about";
  }

  private static Optional<SettingRecord> sameClock(
      SampleRate own, Choice chosen, List<Choice> choices) {
    return chosen.setting().rate().equals(own)
        ? Optional.empty()
        : choices.stream()
            .map(Choice::setting)
            .filter(setting -> setting.rate().equals(own))
            .findFirst()
            .map(SettingRecord::of);
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("noLimit", "sameClock");
  }

  @Override
  public String text() {
    return PlanText.of(this);
  }
}
