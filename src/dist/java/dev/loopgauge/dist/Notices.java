package dev.loopgauge.dist;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * Writes the licence notices of all that is inside the jar, from the SBOM and from the texts that
 * the libraries carry. Run by the build as a single source file, so it uses nothing of this
 * project.
 */
public final class Notices {
  private static final Pattern NOTICE =
      Pattern.compile("META-INF/(.*[/-])?(LICEN[CS]E|NOTICE|COPYING)([.](txt|md|\\w+))?");

  private final Path texts;
  private final StringBuilder list = new StringBuilder();
  private final Map<String, Set<String>> namesByText = new LinkedHashMap<>();

  private Notices(Path texts) {
    this.texts = texts;
  }

  /** Arguments: the SBOM, the folder of texts that the libraries lack, the file to write. */
  public static void main(String[] args) throws IOException {
    Path sbom = Path.of(args[0]);
    if (!Files.exists(sbom)) {
      System.err.println("Maven makes no SBOM offline: this jar can't be passed on.");
      return;
    }
    Notices notices = new Notices(Path.of(args[1]));
    for (Object component : (List<?>) JSON.std.mapFrom(Files.readString(sbom)).get("components")) {
      notices.add((Map<?, ?>) component);
    }
    Files.writeString(Path.of(args[2]), notices.text());
  }

  private void add(Map<?, ?> component) throws IOException {
    String name = component.get("name") + " " + component.get("version");
    List<String> licences = licences(component);
    list.append("  ").append(name).append(": ").append(String.join(" or ", licences)).append('\n');
    List<String> found = new ArrayList<>(inJar(name.replace(' ', '-') + ".jar"));
    Path own = texts.resolve(component.get("name") + ".txt");
    if (Files.exists(own)) {
      found.add(Files.readString(own));
    }
    for (String licence : licences) {
      found.addAll(shared(licence));
    }
    if (found.isEmpty()) {
      throw new IllegalStateException(name + " carries no licence text: put it in " + own);
    }
    for (String text : found) {
      namesByText.computeIfAbsent(text.strip(), none -> new LinkedHashSet<>()).add(name);
    }
  }

  private static List<String> licences(Map<?, ?> component) {
    List<String> names = new ArrayList<>();
    for (Object choice : (List<?>) component.get("licenses")) {
      Map<?, ?> licence = (Map<?, ?>) ((Map<?, ?>) choice).get("license");
      Object id = licence.get("id");
      names.add((id == null ? licence.get("name") : id).toString());
    }
    return names;
  }

  private static List<String> inJar(String jar) throws IOException {
    List<String> found = new ArrayList<>();
    try (ZipFile zip = new ZipFile(onClassPath(jar))) {
      for (ZipEntry entry :
          zip.stream().filter(e -> NOTICE.matcher(e.getName()).matches()).toList()) {
        found.add(new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8));
      }
    }
    return found;
  }

  private static File onClassPath(String jar) {
    for (String element : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
      if (new File(element).getName().equals(jar)) {
        return new File(element);
      }
    }
    throw new IllegalStateException("in the SBOM but not on the class path: " + jar);
  }

  /** The text of a licence that many share; the GPL's is the program's own. */
  private List<String> shared(String licence) throws IOException {
    String name = licence.toLowerCase(Locale.ROOT);
    if (name.contains("lesser") || name.startsWith("lgpl")) {
      return List.of(Files.readString(texts.resolve("LGPL-2.1.txt")));
    }
    if (name.contains("general public license")) {
      return List.of("GNU General Public License, version 3: see LICENSE beside this file.");
    }
    return name.equals("apache-2.0")
        ? List.of(Files.readString(texts.resolve("Apache-2.0.txt")))
        : List.of();
  }

  private String text() {
    StringBuilder text = new StringBuilder("Loopgauge holds these libraries:\n\n").append(list);
    namesByText.forEach(
        (licence, names) ->
            text.append("\n")
                .append("=".repeat(78))
                .append("\n")
                .append(String.join("\n", names))
                .append("\n\n")
                .append(licence)
                .append("\n"));
    return text.toString();
  }
}
