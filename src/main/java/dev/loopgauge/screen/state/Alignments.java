package dev.loopgauge.screen.state;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.plan.AlignRequest;
import dev.loopgauge.plan.Alignment;
import dev.loopgauge.plan.DeskStep;
import dev.loopgauge.plan.MeasuredLoop;
import dev.loopgauge.report.planned.AlignmentDocument;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What to delay in the mixes of a chain: worked out anew only where the chain or what was measured
 * of it is another. Used by one thread at a time.
 */
public final class Alignments {
  private record Question(Chain chain, Map<String, MeasuredDelay> measured) {}

  private Optional<Question> last = Optional.empty();
  private Optional<AlignmentDocument> answer = Optional.empty();

  /**
   * With the paths that were measured as they were measured, the others as predicted; empty for a
   * chain without mixes.
   */
  Optional<AlignmentDocument> of(Chain chain, Map<String, MeasuredDelay> measured) {
    Question question = new Question(chain, measured);
    if (!last.equals(Optional.of(question))) {
      last = Optional.of(question);
      answer = chain.mixes().isEmpty() ? Optional.empty() : Optional.of(worked(question));
    }
    return answer;
  }

  private static AlignmentDocument worked(Question question) {
    Map<String, MeasuredLoop> loops = new HashMap<>();
    question.measured().forEach((path, delay) -> loops.put(path, MeasuredLoop.of(delay.loop())));
    AlignRequest request =
        AlignRequest.of(question.chain(), loops, Optional.empty(), DeskStep.SAMPLE);
    return AlignmentDocument.of(question.chain(), Alignment.of(request), Optional.empty());
  }
}
