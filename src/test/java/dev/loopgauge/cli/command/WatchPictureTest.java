package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.simulated.Pace;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.wiring.Adapters;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Makes README's picture of a watch: what a terminal shows at its end, as text in an SVG. It is
 * written to target/watch.svg; src/doc keeps one, which must show the same but for its figures.
 */
class WatchPictureTest {
  private static final Path KEPT = Path.of("src/doc/watch.svg");
  private static final Path MADE = Path.of("target", "watch.svg");
  private static final String CHAIN =
      """
      chain: Harbour Field, harvest concert
      sample-rate: 8000
      block-size: 64
      reference: { send: 1, return: 1 }
      stages:
        box-in:  { samples: 12 }
        host:    { blocks: 2 }
        limiter: { samples: 40 }
        radio:   { ms: 2.8 }
      paths:
        vocal-house:  { listener: house, stages: [box-in, host, limiter], patch: { send: 2, return: 2 } }
        vocal-wedge:  { listener: wedge, stages: [box-in, host], patch: { send: 2, return: 3 } }
        vocal-in-ear: { listener: in-ear, stages: [box-in, radio], patch: { send: 2, return: 4 } }
        stream:       { listener: stream, stages: [box-in, host], patch: { send: 2, return: 5 } }
      """;

  private static final int ROW = 19;
  private static final double COLUMN = 8.43;
  private static final int COLUMNS = 92;

  /** Colours of the program, by their number, as README's other pictures have them. */
  private static final Map<String, String> COLOURS =
      Map.of("32", "#5fd38d", "33", "#f2c14e", "31", "#ff7b72");

  @TempDir Path folder;

  @Test
  void readmeShowsWhatTheTerminalShows() throws Exception {
    Path chain = Files.writeString(folder.resolve("rig.yaml"), CHAIN);
    Run run =
        Run.on(
            true,
            "",
            Map.of("LOOPGAUGE_DATA", folder.toString()),
            Adapters.of(List::of, Pace.UNBOUND),
            "watch",
            chain.toString(),
            "--backend=simulated",
            "--color=always",
            "--for=70s",
            "--fault=vocal-house:absent=limiter@21",
            "--fault=vocal-in-ear:dropout=34:400",
            "--fault=stream:silent@52");
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out() + run.err());
    String picture = picture(screen(run.out()));
    Files.createDirectories(MADE.getParent());
    Files.writeString(MADE, picture, StandardCharsets.UTF_8);
    assertEquals(
        withoutFigures(Files.readString(KEPT)),
        withoutFigures(picture),
        "copy " + MADE + " over " + KEPT);
    assertTrue(Files.readString(Path.of("README.md")).contains("](" + KEPT + ")"));
  }

  /** Times of day differ, and on which of a few pictures a second the watch ends. */
  private static String withoutFigures(String picture) {
    return picture.replaceAll("[0-9]+", "0").replaceAll("0(\\.0)*", "0").replaceAll(" +", " ");
  }

  /** What is left on the screen: rows that are drawn anew replace those before. */
  private static List<String> screen(String out) {
    List<String> lines = new ArrayList<>();
    for (String line : out.split("\n", -1)) {
      Matcher up = Pattern.compile("\u001b\\[(\\d+)A\u001b\\[J").matcher(line);
      String rest = line;
      while (up.find()) {
        int rows = Integer.parseInt(up.group(1));
        lines.subList(lines.size() - rows, lines.size()).clear();
        rest = line.substring(up.end());
      }
      lines.add(rest);
    }
    return lines;
  }

  private static String picture(List<String> lines) {
    List<String> shown = new ArrayList<>(List.of("$ loopgauge watch rig.yaml"));
    lines.stream().filter(line -> !line.isBlank()).forEach(shown::add);
    StringBuilder svg =
        new StringBuilder(
            """
            <svg xmlns="http://www.w3.org/2000/svg" width="%d" height="%d" role="img">
            <rect width="100%%" height="100%%" fill="#14171c"/>
            <g font-family="'DejaVu Sans Mono', Consolas, Menlo, monospace" font-size="14" fill="#d7dae0">
            """
                .formatted((int) (COLUMN * COLUMNS) + 36, ROW * shown.size() + 30));
    for (int i = 0; i < shown.size(); i++) {
      svg.append(
          "<text x=\"18\" y=\"%d\" xml:space=\"preserve\">%s</text>%n"
              .formatted(ROW * i + 30, coloured(shown.get(i))));
    }
    return svg.append("</g></svg>\n").toString();
  }

  private static String coloured(String line) {
    String text = line.replace("&", "&amp;").replace("<", "&lt;");
    StringBuilder spans = new StringBuilder();
    boolean open = false;
    int at = 0;
    Matcher code = Pattern.compile("\u001b\\[(\\d+)m").matcher(text);
    while (code.find()) {
      spans.append(text, at, code.start());
      at = code.end();
      String colour = COLOURS.get(code.group(1));
      if (colour != null) {
        spans.append("<tspan font-weight=\"bold\" fill=\"").append(colour).append("\">");
        open = true;
      } else if (open && code.group(1).equals("39")) {
        spans.append("</tspan>");
        open = false;
      }
    }
    return spans.append(text.substring(at)).toString();
  }
}
