package dev.loopgauge.report.planned;

import dev.loopgauge.chain.Air;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.plan.AlignedMix;
import dev.loopgauge.plan.AlignedPath;
import dev.loopgauge.plan.Alignment;
import dev.loopgauge.plan.Conflict;
import dev.loopgauge.plan.DeskStep;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What to add to each path of each mix.
 *
 * @param outcome {@code aligned}, {@code beyond-desk}, {@code over-limit} or {@code conflicting}
 * @param step the steps in which the desk sets delays
 * @param mixes the mixes
 * @param conflicts where a path would need two delays at once
 * @param csvFile the file that the table was written to as well
 */
public record AlignmentDocument(
    String command,
    String outcome,
    Optional<String> step,
    List<MixRecord> mixes,
    List<ConflictRecord> conflicts,
    Optional<String> csvFile)
    implements Document, Sparse {
  /** The outcome where nothing stands against it. */
  static final String ALIGNED = "aligned";

  /** The outcome where the desk can't delay a path by as much as it needs. */
  static final String BEYOND_DESK = "beyond-desk";

  private static final int DISTANCE_DECIMALS = 4;

  /** A mix, and what rounding leaves between those of its paths that the desk can delay enough. */
  public record MixRecord(
      String name,
      Optional<String> target,
      Optional<BigDecimal> widestGapSamples,
      Optional<BigDecimal> firstNullHz,
      List<String> unknownCompensation,
      List<AlignedRecord> paths) {
    private static MixRecord of(Chain chain, DeskStep step, AlignedMix mix) {
      AlignedMix reached = mix.reached(step, chain);
      return new MixRecord(
          mix.name(),
          Optional.of(mix.targets()).filter(met -> met.size() == 1).map(met -> met.get(0)),
          Optional.of(Written.samples(reached.widestGap().samples())),
          Written.hz(reached.firstNullHz()),
          mix.unknown(),
          mix.paths().stream().map(path -> AlignedRecord.of(chain, step, path)).toList());
    }
  }

  /**
   * A path, and what to add to it.
   *
   * @param source predicted, or measured, in which state and when
   * @param limitMs the performer's limit, where it is passed
   * @param outsideBudget whether it is a reading that is not as the budget says
   * @param part {@code meets}, {@code held} or {@code alone}
   * @param meets the path that it meets with the delay added, itself for that one
   * @param beyondDesk true where the desk can't delay it by as much as it needs
   * @param position where they meet, if loudspeakers at positions make them
   */
  public record AlignedRecord(
      String path,
      Optional<BigDecimal> delaySamples,
      Optional<BigDecimal> delayMs,
      Optional<BigDecimal> offsetMs,
      BigDecimal addSamples,
      BigDecimal addMs,
      Optional<BigDecimal> addMetres,
      Optional<BigDecimal> addFeet,
      Optional<BigDecimal> leavesSamples,
      Optional<BigDecimal> firstNullHz,
      Optional<Boolean> passesLimit,
      Optional<String> source,
      Optional<BigDecimal> limitMs,
      Optional<String> limitSource,
      Optional<Boolean> outsideBudget,
      Optional<String> part,
      Optional<String> meets,
      Optional<String> position,
      Optional<Boolean> beyondDesk)
      implements Sparse {
    private static AlignedRecord of(Chain chain, DeskStep step, AlignedPath path) {
      double metres = path.add().seconds() * Air.metresPerSecond(chain.airTemperatureC());
      Optional<AlignedPath> over = Optional.of(path).filter(AlignedPath::passesLimit);
      return new AlignedRecord(
          path.path(),
          Optional.of(Written.samples(path.delay().delay().samples())),
          Optional.of(Written.ms(path.delay().delay().ms())),
          Optional.of(Written.ms(path.offset().ms())),
          Written.samples(path.add().samples()),
          Written.ms(path.add().ms()),
          Optional.of(Numbers.rounded(metres, DISTANCE_DECIMALS)),
          Optional.of(Numbers.rounded(metres / Air.METRES_PER_FOOT, DISTANCE_DECIMALS)),
          Optional.of(Written.samples(path.left().samples())),
          Written.hz(path.firstNullHz()),
          Optional.of(path.passesLimit()),
          Optional.of(path.source()),
          over.flatMap(p -> Written.ms(p.limits().limitMs())),
          over.map(p -> p.limits().rule()),
          Optional.of(path.outsideBudget()),
          Optional.of(path.part().label()),
          path.meets(),
          path.position(),
          Optional.of(true).filter(yes -> path.exceedsDesk(step, chain)));
    }

    @Override
    public Set<String> leftOut() {
      return Set.of(
          "limitMs", "limitSource", "outsideBudget", "part", "meets", "position", "beyondDesk");
    }
  }

  /** A path that needs one delay in one mix and another in another. */
  public record ConflictRecord(
      String path,
      String mix,
      BigDecimal addSamples,
      String otherMix,
      BigDecimal otherAddSamples,
      Optional<BigDecimal> addMs,
      Optional<BigDecimal> otherAddMs)
      implements Sparse {
    private static ConflictRecord of(Conflict conflict) {
      return new ConflictRecord(
          conflict.path(),
          conflict.larger(),
          Written.samples(conflict.add().samples()),
          conflict.smaller(),
          Written.samples(conflict.otherAdd().samples()),
          Optional.of(Written.ms(conflict.add().ms())),
          Optional.of(Written.ms(conflict.otherAdd().ms())));
    }

    @Override
    public Set<String> leftOut() {
      return Set.of("addMs", "otherAddMs");
    }
  }

  /**
   * The document of an alignment.
   *
   * @param csvFile the file that the table was written to as well
   */
  public static AlignmentDocument of(Chain chain, Alignment alignment, Optional<String> csvFile) {
    return new AlignmentDocument(
        "align",
        outcome(chain, alignment),
        Optional.of(alignment.step().label()),
        alignment.mixes().stream().map(mix -> MixRecord.of(chain, alignment.step(), mix)).toList(),
        alignment.conflicts().stream().map(ConflictRecord::of).toList(),
        csvFile);
  }

  private static String outcome(Chain chain, Alignment alignment) {
    if (!alignment.conflicts().isEmpty()) {
      return "conflicting";
    }
    if (alignment.passesLimit()) {
      return "over-limit";
    }
    boolean beyond =
        alignment.mixes().stream()
            .flatMap(mix -> mix.paths().stream())
            .anyMatch(path -> path.exceedsDesk(alignment.step(), chain));
    return beyond ? BEYOND_DESK : ALIGNED;
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("csvFile");
  }

  /** Whether nothing stands against setting the delays as they are. */
  public boolean isGood() {
    return outcome.equals(ALIGNED);
  }

  /** Whether the desk can't delay a path by as much as it needs. */
  public boolean isBeyondDesk() {
    return outcome.equals(BEYOND_DESK);
  }

  @Override
  public String text() {
    return AlignmentText.of(this);
  }
}
