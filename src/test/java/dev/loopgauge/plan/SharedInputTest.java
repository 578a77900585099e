package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.StageDelay;
import java.util.List;
import org.junit.jupiter.api.Test;

class SharedInputTest {
  private static List<String> names(List<StageDelay> stages) {
    return stages.stream().map(StageDelay::name).toList();
  }

  @Test
  void pathsThatBeginAlikeCarryOneInputUnlessTheyNameIt() {
    Chain alike = Harbour.chain();
    List<SharedInput> one = SharedInput.among(alike, Harbour.budgets(alike));
    assertEquals(1, one.size());
    assertEquals("box-in", one.get(0).input());
    assertEquals(3, one.get(0).others().size());

    Chain named =
        Harbour.with("{ listener: in-ear, stages", "{ input: vocal, listener: in-ear, stages");
    assertEquals(
        List.of("box-in", "vocal"),
        SharedInput.among(named, Harbour.budgets(named)).stream().map(SharedInput::input).toList());
  }

  /** In-ear 71 samples; stream 12 + 48 + 128 = 188, so 117 later: the blocks, but no box out. */
  @Test
  void tellsHowMuchLaterEachIsAndWhy() {
    Chain chain = Harbour.chain();
    SharedInput input = SharedInput.among(chain, Harbour.budgets(chain)).get(0);
    assertEquals("vocal-in-ear", input.fastest().name());
    SharedInput.Destination stream = input.others().get(0);
    assertEquals("vocal-stream", stream.path().name());
    assertEquals(117, stream.later().samples(), 1e-9);
    assertEquals(List.of("host-blocks"), names(stream.stages().added()));
    assertEquals(List.of("box-out"), names(stream.stages().spared()));
  }

  @Test
  void stageThatIsPassedOftenerMakesTheDifference() {
    Chain chain =
        Harbour.with(
            "stream, stages: [box-in, console, host-blocks]",
            "stream, stages: [box-in, console, box-out, console]");
    SharedInput input = SharedInput.among(chain, Harbour.budgets(chain)).get(0);
    assertEquals(List.of("console"), names(input.others().get(0).stages().added()));
    assertEquals(List.of(), names(input.others().get(0).stages().spared()));
  }

  @Test
  void inputWithOneDestinationIsNotShared() {
    Chain chain = Harbour.chain();
    assertEquals(
        List.of(), SharedInput.among(chain, List.of(Harbour.budget(chain, "vocal-house"))));
  }
}
