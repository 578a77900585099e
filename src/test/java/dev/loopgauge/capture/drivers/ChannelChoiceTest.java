package dev.loopgauge.capture.drivers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class ChannelChoiceTest {
  @Test
  void aMaskOpensNoMoreThanIsWantedInTheOrderWanted() {
    List<ChannelChoice> choices = ChannelChoice.of(List.of(5, 0, 63), 70, true);
    assertEquals(1, choices.size());
    assertEquals(3, choices.get(0).count());
    assertEquals(1L | 1L << 5 | 1L << 63, choices.get(0).mask());
    assertEquals(List.of(1, 0, 2), choices.get(0).places());
  }

  @Test
  void withoutAMaskAllUpToTheLastAreOpenedAndMoreWhereTheDeviceInsists() {
    assertUnmasked(ChannelChoice.of(List.of(2, 0), 4, false), 3, 4);
    assertUnmasked(ChannelChoice.of(List.of(2, 64), 66, true), 65, 66);
  }

  private static void assertUnmasked(List<ChannelChoice> choices, int... counts) {
    assertArrayEquals(counts, choices.stream().mapToInt(ChannelChoice::count).toArray());
    for (ChannelChoice choice : choices) {
      assertEquals(0, choice.mask());
      assertEquals(2, choice.places().get(0));
    }
  }

  @Test
  void noChannelsAreOneChoice() {
    assertEquals(0, ChannelChoice.of(List.of(), 4, true).get(0).count());
  }
}
