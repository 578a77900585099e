package dev.loopgauge.architecture;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.List;
import java.util.stream.Stream;

/** What the rules about the whole project look at. */
final class Project {
  /** All classes but those of the tests. */
  static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(place -> !place.contains("/test-classes/"))
          .importPackages("dev.loopgauge");

  /** The rooms of the estimate that nothing outside it may use. */
  static final List<String> ESTIMATE_INSIDE =
      List.of(
          "estimate.spectrum",
          "estimate.integrity",
          "estimate.path",
          "estimate.measurand",
          "estimate.detection",
          "estimate.drift");

  /** The pure packages that others may use. */
  static final List<String> CORE =
      List.of(
          "stats",
          "signal",
          "signal.filter",
          "estimate",
          "estimate.reading",
          "estimate.result",
          "chain",
          "verify",
          "verify.verdict",
          "verify.watch",
          "plan");

  /** All pure packages. */
  static final List<String> PURE = Stream.of(CORE, ESTIMATE_INSIDE).flatMap(List::stream).toList();

  private Project() {}

  /** The whole name of a package of this project. */
  static String name(String part) {
    return "dev.loopgauge." + part;
  }

  /** The whole names of packages of this project. */
  static String[] names(List<String> parts) {
    return parts.stream().map(Project::name).toArray(String[]::new);
  }

  /** A list and more. */
  static List<String> with(List<String> packages, String... more) {
    return Stream.concat(packages.stream(), Stream.of(more)).toList();
  }
}
