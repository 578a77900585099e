package dev.loopgauge.verify;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Change;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Random rigs with one thing wrong: the search must find that thing. */
@Tag("campaign")
class ExplanationPropertyTest {
  private static final int CHAINS = 1000;
  private static final double UNCERTAINTY = 0.05;
  private static final double ALLOW = 1;

  @ParameterizedTest
  @ValueSource(longs = {1, 20, 300, 4000})
  void theTrueCauseIsAmongThoseThatFitAndFirstWhereNoOtherDoes(long seed) {
    Random random = new Random(seed);
    int late = 0;
    int alone = 0;
    for (int i = 0; i < CHAINS; i++) {
      String yaml = randomChain(random);
      Chain chain = Rigs.parsed(yaml);
      Change fault = randomFault(chain, random);
      String trial = "seed " + seed + ", chain " + i + ", " + fault.written() + "\n" + yaml;
      Comparison comparison = compare(chain, fault, random);
      if (comparison.verdict() == Verdict.LATE || comparison.verdict() == Verdict.EARLY) {
        late++;
        List<Explanation> explanations = comparison.explanations();
        String expected = told(chain, fault);
        assertTrue(
            explanations.stream().anyMatch(e -> e.text().startsWith(closest(expected))),
            () -> trial + explanations);
        if (explanations.size() == 1) {
          alone++;
        }
      }
    }
    assertTrue(late > CHAINS / 2 && alone > CHAINS / 5, late + " off, " + alone + " unmistakable");
  }

  private static String told(Chain chain, Change fault) {
    String text = Hypothesis.nothing(chain).and(fault).text();
    return text.substring(0, text.indexOf(". "));
  }

  /** A distance is found to within the reading, so its own figure need not be the same. */
  private static String closest(String told) {
    return told.contains(" m long") ? told.substring(0, told.indexOf(" is ")) : told;
  }

  private static Comparison compare(Chain chain, Change fault, Random random) {
    Hypothesis truth = Hypothesis.nothing(chain).and(fault);
    SampleRate card = new SampleRate(random.nextBoolean() ? chain.rate().hertz() : 96_000);
    double tolerance = truth.toleranceSamples(card);
    double samples =
        truth.predictedSamples(card)
            + tolerance * (2 * random.nextDouble() - 1)
            + UNCERTAINTY * (2 * random.nextDouble() - 1);
    Measurement measurement = Rigs.measured(samples, UNCERTAINTY, card);
    return Comparison.of(measurement, chain, chain.path("path"), ALLOW);
  }

  private static String randomChain(Random random) {
    StringBuilder stages = new StringBuilder();
    List<String> names = new ArrayList<>();
    int count = 2 + random.nextInt(8);
    for (int i = 0; i < count; i++) {
      names.add("s" + i);
      stages.append("  s").append(i).append(": { ").append(randomStage(random)).append(" }\n");
    }
    stages.append("  elsewhere: { samples: 333, reported-by: host }\n");
    String list = String.join(", ", names);
    return "sample-rate: "
        + (random.nextBoolean() ? 48_000 : 44_100)
        + "\nblock-size: "
        + BlockSizes.USUAL.get(random.nextInt(BlockSizes.USUAL.size()))
        + "\nstages:\n"
        + stages
        + ("paths:\n  path: { listener: house, stages: [" + list + "]")
        + (random.nextBoolean() ? ", loop: [" + list + "] }\n" : " }\n");
  }

  private static String randomStage(Random random) {
    String reported = random.nextInt(3) == 0 ? ", reported-by: host" : "";
    String tolerance = random.nextInt(4) == 0 ? ", tolerance-samples: 1" : "";
    return switch (random.nextInt(6)) {
          case 0 -> "blocks: " + (1 + random.nextInt(3));
          case 1 -> "ms: " + random.nextInt(4000) / 1000.0;
          case 2 -> "metres: " + random.nextInt(200) / 10.0;
          case 3 -> "packets: 4, packet-time-us: 125";
          default -> "samples: " + random.nextInt(600);
        }
        + reported
        + tolerance;
  }

  private static Change randomFault(Chain chain, Random random) {
    List<Change> faults = new ArrayList<>(SingleChanges.of(chain));
    double metresOff = 2 * random.nextDouble() - 1;
    faults.addAll(SingleChanges.distances(chain, metresOff / 343.2));
    return faults.get(random.nextInt(faults.size()));
  }
}
