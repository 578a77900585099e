package dev.loopgauge.dist;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What is inside the image, for machines (CycloneDX): all that is inside the jar, and the Java that
 * goes with it, with what that holds of others by the notices in its folder {@code legal}.
 */
final class ImageSbom {
  /** Of OpenJDK, as its own files LICENSE and ASSEMBLY_EXCEPTION say; an SPDX expression. */
  private static final String JAVA_LICENCE = "GPL-2.0-only WITH Classpath-exception-2.0";

  /** A notice begins with the name, and mostly the version: {@code ## Mesa 3-D v21.0.3}. */
  private static final Pattern HEADING =
      Pattern.compile("#+ *(.+?)(?:,? (?:[vV]ersion |[vV][. ]?)?([0-9][\\w.-]*))?:?");

  private ImageSbom() {}

  /**
   * Writes it.
   *
   * @param jars the SBOM of the jar
   * @param runtime the Java that goes with it, linked from the one that runs this
   */
  static void write(Path jars, Path runtime, Path file) throws IOException {
    Map<String, Object> sbom = new LinkedHashMap<>(JSON.std.mapFrom(Files.readString(jars)));
    Map<String, Object> java = java(runtime);
    List<Object> components = new ArrayList<>((List<?>) sbom.get("components"));
    components.add(java);
    sbom.put("components", components);
    String of = sbom.get("serialNumber") + " " + java.get("version");
    UUID number = UUID.nameUUIDFromBytes(of.getBytes(StandardCharsets.UTF_8));
    sbom.put("serialNumber", "urn:uuid:" + number);
    Files.writeString(file, JSON.std.with(JSON.Feature.PRETTY_PRINT_OUTPUT).asString(sbom) + "\n");
  }

  private static Map<String, Object> java(Path runtime) throws IOException {
    Properties release = new Properties();
    try (var in = Files.newBufferedReader(runtime.resolve("release"))) {
      release.load(in);
    }
    Map<String, Object> java = new LinkedHashMap<>();
    java.put("type", "platform");
    java.put("bom-ref", "java-runtime");
    java.put("publisher", System.getProperty("java.vendor"));
    java.put("name", "OpenJDK");
    java.put("version", System.getProperty("java.runtime.version"));
    java.put("description", "Modules: " + release.getProperty("MODULES").replace("\"", ""));
    java.put("licenses", List.of(Map.of("expression", JAVA_LICENCE)));
    java.put("components", new ArrayList<>(others(runtime.resolve("legal")).values()));
    return java;
  }

  /** What the Java holds of others; several modules may carry one notice. */
  private static SortedMap<String, Object> others(Path legal) throws IOException {
    SortedMap<String, Object> others = new TreeMap<>();
    try (Stream<Path> all = Files.walk(legal)) {
      for (Path notice : all.filter(file -> file.toString().endsWith(".md")).sorted().toList()) {
        String heading = Files.readString(notice).strip().lines().findFirst().orElseThrow().strip();
        String where = "legal/" + legal.relativize(notice).toString().replace('\\', '/');
        others.putIfAbsent(heading, other(heading, where));
      }
    }
    return others;
  }

  private static Map<String, Object> other(String heading, String where) {
    Matcher matcher = HEADING.matcher(heading);
    if (!matcher.matches()) {
      throw new IllegalStateException("no name at the head of " + where + ": " + heading);
    }
    Map<String, Object> other = new LinkedHashMap<>();
    other.put("type", "library");
    other.put("name", matcher.group(1));
    if (matcher.group(2) != null) {
      other.put("version", matcher.group(2));
    }
    other.put("licenses", List.of(Map.of("license", Map.of("name", "see " + where))));
    return other;
  }
}
