package dev.loopgauge.report.form;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Takes the names of folders and computers out of what may leave this one: files and databases are
 * told by their own names.
 */
public final class Discreet {
  private static final Pattern DATABASE = Pattern.compile("(?i)(jdbc:[a-z]+://)([^/?#]+)(/)");

  /** What is said instead, the longest first, so that no part of a name is left. */
  private final List<Map.Entry<String, String>> instead = new ArrayList<>();

  /**
   * Knows where these lie, and the user's own folder and the one that the program runs in.
   *
   * @param places files, folders and addresses of databases, as they were written
   */
  public Discreet(List<String> places) {
    places.forEach(this::addPlace);
    addFolder(Path.of("").toAbsolutePath());
    addFolder(Path.of(System.getProperty("user.home")));
    instead.sort(Comparator.comparing(known -> -known.getKey().length()));
  }

  private void addPlace(String place) {
    Matcher database = DATABASE.matcher(place);
    if (database.find()) {
      instead.add(Map.entry(database.group(), ""));
      instead.add(Map.entry(database.group(2), "the server"));
      return;
    }
    try {
      Path path = Path.of(place);
      addFolder(path.getParent());
      addFolder(path.toAbsolutePath().normalize().getParent());
    } catch (InvalidPathException e) {
      // No file of that name can have been used.
    }
  }

  private void addFolder(Path folder) {
    if (folder != null && folder.getNameCount() > 0 && !folder.toString().isEmpty()) {
      instead.add(Map.entry(folder + folder.getFileSystem().getSeparator(), ""));
    }
  }

  /** The text without them. */
  public String told(String text) {
    String told = text;
    for (Map.Entry<String, String> known : instead) {
      told =
          Pattern.compile("(?<![\\p{L}\\p{N}._-])" + Pattern.quote(known.getKey()))
              .matcher(told)
              .replaceAll(Matcher.quoteReplacement(known.getValue()));
    }
    return told;
  }
}
