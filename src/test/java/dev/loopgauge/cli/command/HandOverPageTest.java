package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.report.html.TwelvePaths;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of twelve paths, measured before and after on the simulated rig. */
@Tag("campaign")
class HandOverPageTest {
  private static final int LARGEST_BYTES = 300_000;

  private static final Pattern FIRST_SECTION =
      Pattern.compile("<section aria-labelledby=\"verdict\">(.*?)</section>", Pattern.DOTALL);

  private static final Pattern TAGS = Pattern.compile("<[^>]*>");

  /** Where all go round before, once. */
  @TempDir private static Path shared;

  @TempDir private Path folder;
  private TwelvePaths field;

  @BeforeAll
  static void goRoundBefore() {
    TwelvePaths before = new TwelvePaths(shared);
    assertEquals(0, before.round("before", "--set=place=Orchard Field").exitCode());
  }

  @BeforeEach
  void copyJournal() throws IOException {
    Files.copy(shared.resolve("journal.db"), folder.resolve("journal.db"));
    field = new TwelvePaths(folder);
  }

  /** The words of the first section. */
  private static String first(String page) {
    Matcher section = FIRST_SECTION.matcher(page);
    assertTrue(section.find(), page);
    return TAGS.matcher(section.group(1))
        .replaceAll(" ")
        .replaceAll("\\s+", " ")
        .replace(" ,", ",");
  }

  private static void assertSmall(Path page) throws IOException {
    assertTrue(Files.size(page) <= LARGEST_BYTES, page + " has " + Files.size(page) + " bytes");
  }

  @Test
  void namesFaultsOfPathsInItsFirstSectionAndStaysSmall() throws IOException {
    field.round(
        "after",
        "--fault=lead-house:inverted",
        "--fault=drums-in-ear:extra-block=host-blocks",
        "--fault=truck-mix:silent",
        "--fault=balcony:noise=-30");
    Path page = field.page("page.html", "--by=Ada Winter", "--title=Orchard, last night");
    assertSmall(page);
    String html = Files.readString(page);
    String first = first(html);
    for (String words :
        new String[] {
          "not good lead-house WITHIN, BUT INVERTED",
          "not good drums-in-ear LATE by 64 samples (1.33 ms)",
          "undecided truck-mix No trustworthy reading",
          "good lead-in-ear, guitar-in-ear, ",
          "Changed from before to after",
          "lead-house polarity: inverted since",
          "drums-in-ear delay: 64.00 samples (1.33 ms) later",
          "truck-mix delay: nothing heard any more",
          "balcony noise: "
        }) {
      assertTrue(first.contains(words), words + " in " + first);
    }
    String all = TAGS.matcher(html).replaceAll(" ");
    assertTrue(all.contains("measured by Ada Winter"), all);
    assertTrue(html.contains("<h1><bdi>Orchard, last night</bdi></h1>"), all);
    assertFalse(html.contains("<details open"), "folded");
  }

  @Test
  void staysSmallWhenEveryPathIsWrong() throws IOException {
    field.round("after", "--fault=inverted");
    Path page = field.page("page.html");
    assertSmall(page);
    String first = first(Files.readString(page));
    assertEquals(12, first.split("BUT INVERTED", -1).length - 1, first);
    assertEquals(12, first.split("polarity: inverted since", -1).length - 1, first);
  }

  @Test
  void showsAllWhenAsked() throws IOException {
    field.round("after");
    String brief = Files.readString(field.page("page.html"));
    String full = Files.readString(field.page("full.html", "--full"));
    assertTrue(first(brief).contains("Good: all 12. Nothing changed from before to after."));
    assertEquals(12 * 2, full.split(">Delay by octave band</title>", -1).length - 1);
    assertTrue(full.length() > 2 * brief.length(), full.length() + " " + brief.length());
    assertFalse(full.contains("<details><summary>"), "all unfolded");
  }

  @Test
  void readsRoundsFromFilesAsTheirPaths() throws IOException {
    Run after = field.round("after", "--fault=lead-house:inverted", "--json");
    Path file = Files.writeString(folder.resolve("after.json"), after.out());
    Path before =
        Files.writeString(folder.resolve("before.json"), field.round("before", "--json").out());
    Path page = folder.resolve("files.html");
    field.run("report", "--from", before.toString(), file.toString(), "-o", page.toString());
    String first = first(Files.readString(page));
    assertTrue(first.contains("Not good: lead-house. Good: 11 of 12."), first);
    assertTrue(first.contains("lead-house polarity: inverted since"), first);
  }
}
