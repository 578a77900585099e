package dev.loopgauge.job.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.job.UsageException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CommandWordsTest {
  @Test
  void blanksPartWordsAndQuotesKeepThemTogether() {
    assertEquals(List.of("tell", "a", "b"), CommandWords.of("  tell a\t b "));
    assertEquals(
        List.of("tell", "front of house", "b c"), CommandWords.of("tell 'front of house' \"b c\""));
    assertEquals(List.of("tell", "a b c"), CommandWords.of("tell a' b 'c"));
    assertEquals(List.of("tell", "", "x"), CommandWords.of("tell '' x"));
    assertEquals(List.of("tell", "it's", "\"so\""), CommandWords.of("tell \"it's\" '\"so\"'"));
  }

  @Test
  void nothingElseMeansAnything() {
    assertEquals(
        List.of("C:\\bin\\tell", "$HOME", "*", "|", "a;b", "`id`", "$(id)", ">x", "\\"),
        CommandWords.of("C:\\bin\\tell $HOME * | a;b `id` $(id) >x \\"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "  ", "''", "tell 'a", "tell \"a", "tell it's"})
  void refusesWhatNamesNoProgramOrIsNotClosed(String command) {
    assertThrows(UsageException.class, () -> CommandWords.of(command));
  }
}
