package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The launchers choose the virtual machine's flags by command, each in its own language. */
class LaunchersTest {
  private static final Path LAUNCHERS = Path.of("src", "dist", "launcher");

  private static List<String> list(String launcher, String before, String separator, String after)
      throws IOException {
    String text = Files.readString(LAUNCHERS.resolve(launcher));
    Matcher list =
        Pattern.compile(Pattern.quote(before) + "([^)]*)" + Pattern.quote(after)).matcher(text);
    assertTrue(list.find(), text);
    return List.of(list.group(1).split(separator));
  }

  /** A new command must be put with the short ones or the long ones. */
  @Test
  void eachCommandIsShortOnUnixOrLongOnWindows() throws IOException {
    Set<String> known = new TreeSet<>(list("loopgauge", "  -* | help | ", " \\| ", ")"));
    assertTrue(known.remove("completion"));
    for (String command : list("loopgauge.cmd", "for %%c in (", " ", ")")) {
      assertTrue(known.add(command), command + " is short here and long there");
    }
    assertEquals(new TreeSet<>(Commands.names()), known);
  }
}
