package dev.loopgauge.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static dev.loopgauge.architecture.Project.CLASSES;
import static dev.loopgauge.architecture.Project.CORE;
import static dev.loopgauge.architecture.Project.ESTIMATE_INSIDE;
import static dev.loopgauge.architecture.Project.name;
import static dev.loopgauge.architecture.Project.names;
import static dev.loopgauge.architecture.Project.with;
import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.jna.Callback;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class LayersTest {
  private static final List<String> BELOW_REPORT =
      with(CORE, "capture", "measure", "setup", "journal");

  private static final List<String> REPORT_ROOMS =
      List.of(
          "report.form",
          "report.measured",
          "report.patch",
          "report.budget",
          "report.planned",
          "report.series",
          "report.logged",
          "report.rig",
          "report.watch");

  /** What jobs may use: everything but the adapters to real sound. */
  private static final List<String> BELOW_JOB =
      Stream.of(
              BELOW_REPORT,
              REPORT_ROOMS,
              List.of(
                  "chain.file",
                  "capture.file",
                  "journal.store",
                  "report.exchange",
                  "report.html",
                  "report.kind"))
          .flatMap(List::stream)
          .toList();

  private static final List<String> JOBS =
      List.of("job", "job.kept", "job.live", "job.recorded", "job.planned", "job.event");

  /** Each package and the other packages of this project that it may use. */
  private static final Map<String, List<String>> MAY_USE =
      Map.ofEntries(
          Map.entry("signal", List.of()),
          Map.entry("signal.filter", List.of("signal")),
          Map.entry("stats", List.of()),
          Map.entry("estimate.result", List.of("signal", "stats")),
          Map.entry("estimate.reading", List.of("signal")),
          Map.entry("estimate.spectrum", List.of("estimate.reading", "signal")),
          Map.entry(
              "estimate.integrity",
              List.of(
                  "estimate.spectrum", "estimate.reading", "estimate.result", "signal", "stats")),
          Map.entry(
              "estimate.path",
              List.of(
                  "estimate.integrity",
                  "estimate.spectrum",
                  "estimate.reading",
                  "estimate.result",
                  "signal",
                  "stats")),
          Map.entry(
              "estimate.measurand",
              List.of("estimate.path", "estimate.spectrum", "estimate.result", "signal", "stats")),
          Map.entry(
              "estimate.detection",
              List.of(
                  "estimate.path",
                  "estimate.integrity",
                  "estimate.spectrum",
                  "estimate.reading",
                  "estimate.result",
                  "signal",
                  "stats")),
          Map.entry(
              "estimate.drift",
              List.of(
                  "estimate.detection",
                  "estimate.path",
                  "estimate.integrity",
                  "estimate.spectrum",
                  "estimate.reading",
                  "estimate.result",
                  "signal",
                  "stats")),
          Map.entry(
              "estimate",
              with(ESTIMATE_INSIDE, "estimate.reading", "estimate.result", "signal", "stats")),
          Map.entry("chain", List.of("signal")),
          Map.entry("chain.file", List.of("signal", "chain")),
          Map.entry("verify", List.of("signal", "estimate.result", "chain", "stats")),
          Map.entry(
              "verify.watch", List.of("verify", "signal", "estimate.result", "chain", "stats")),
          Map.entry("verify.verdict", List.of("verify", "signal", "estimate.result", "chain")),
          Map.entry("plan", List.of("signal", "chain", "verify", "verify.verdict", "stats")),
          Map.entry("capture", List.of("signal")),
          Map.entry("capture.alsa", List.of("capture", "signal")),
          Map.entry("capture.javasound", List.of("capture", "capture.alsa", "signal")),
          Map.entry("capture.jack", List.of("capture", "signal")),
          Map.entry("capture.drivers", List.of("capture", "capture.alsa", "signal")),
          Map.entry("capture.file", List.of("capture", "signal")),
          Map.entry(
              "capture.simulated",
              List.of("capture", "signal", "signal.filter", "chain", "chain.file")),
          Map.entry(
              "measure",
              List.of(
                  "signal", "estimate", "estimate.reading", "estimate.result", "capture", "stats")),
          Map.entry("setup", List.of("signal", "capture", "measure")),
          Map.entry("journal", with(CORE, "chain.file")),
          Map.entry("journal.store", List.of("journal", "signal", "verify.verdict", "setup")),
          Map.entry("report.form", List.of("estimate.result", "verify", "verify.verdict")),
          Map.entry("report.measured", with(BELOW_REPORT, "report.form")),
          Map.entry("report.patch", with(BELOW_REPORT, "report.form")),
          Map.entry("report.budget", with(BELOW_REPORT, "report.form")),
          Map.entry("report.planned", with(BELOW_REPORT, "report.form", "report.budget")),
          Map.entry("report.series", with(BELOW_REPORT, "report.form")),
          Map.entry("report.logged", with(BELOW_REPORT, "report.form", "report.budget")),
          Map.entry(
              "report.rig", with(BELOW_REPORT, "report.form", "report.budget", "report.measured")),
          Map.entry("report.watch", with(BELOW_REPORT, "report.form", "report.measured")),
          Map.entry(
              "report.kind",
              List.of(
                  "report.form",
                  "report.measured",
                  "report.patch",
                  "report.budget",
                  "report.planned",
                  "report.series",
                  "verify.verdict")),
          Map.entry(
              "report.exchange",
              List.of(
                  "report.form", "report.kind", "journal", "chain", "signal", "verify.verdict")),
          Map.entry("report.plot", List.of()),
          Map.entry(
              "report.html",
              with(
                  REPORT_ROOMS,
                  "report.kind",
                  "report.plot",
                  "stats",
                  "signal",
                  "chain",
                  "chain.file",
                  "verify",
                  "verify.verdict",
                  "plan",
                  "journal")),
          Map.entry("job", BELOW_JOB),
          Map.entry("job.kept", with(BELOW_JOB, "job")),
          Map.entry("job.live", with(BELOW_JOB, "job", "job.kept")),
          Map.entry("job.recorded", with(BELOW_JOB, "job", "job.kept")),
          Map.entry("job.planned", with(BELOW_JOB, "job", "job.kept")),
          Map.entry("job.event", List.of("job", "report.form", "report.watch")),
          Map.entry("metrics", List.of("job", "report.watch", "verify.watch")),
          Map.entry(
              "screen.state",
              List.of(
                  "report.form",
                  "report.measured",
                  "report.patch",
                  "report.budget",
                  "report.planned",
                  "report.logged",
                  "report.watch",
                  "report.html",
                  "estimate.result",
                  "signal",
                  "chain",
                  "plan",
                  "verify",
                  "verify.verdict",
                  "verify.watch",
                  "journal",
                  "capture",
                  "job")),
          Map.entry(
              "screen.desk",
              with(BELOW_JOB, "job", "job.kept", "job.live", "job.planned", "screen.state")),
          Map.entry(
              "screen.web",
              List.of("screen.desk", "job", "chain.file", "journal", "report.form", "signal")),
          Map.entry(
              "screen",
              List.of(
                  "screen.desk",
                  "screen.web",
                  "job",
                  "job.live",
                  "report.measured",
                  "setup",
                  "chain.file")),
          Map.entry("cli.terminal", with(BELOW_JOB, "job")),
          Map.entry(
              "cli.option", with(JOBS, "signal", "estimate", "plan", "journal", "journal.store")),
          Map.entry(
              "cli.wiring",
              List.of(
                  "capture",
                  "capture.javasound",
                  "capture.jack",
                  "capture.drivers",
                  "capture.simulated",
                  "chain",
                  "job.live")),
          Map.entry("cli.demo", with(BELOW_JOB, "job", "job.live")),
          Map.entry(
              "cli.command",
              with(
                  Stream.concat(BELOW_JOB.stream(), JOBS.stream()).toList(),
                  "cli.option",
                  "cli.terminal",
                  "cli.demo",
                  "metrics",
                  "screen",
                  "screen.desk")));

  /** Libraries that one package keeps to itself, so that they can be exchanged there. */
  private static final Map<String, List<String>> LIBRARIES =
      Map.ofEntries(
          Map.entry("org.jtransforms..", List.of("estimate.spectrum")),
          Map.entry("org.visnow..", List.of("estimate.spectrum")),
          Map.entry("org.apache.commons.statistics..", List.of("stats")),
          Map.entry("org.snakeyaml..", List.of("chain.file", "setup")),
          Map.entry("de.siegmar.fastcsv..", List.of("verify", "report.exchange")),
          Map.entry(
              "be.tarsos..", List.of("capture.javasound", "capture.file", "capture.simulated")),
          Map.entry("org.jaudiolibs..", List.of("capture.jack")),
          Map.entry("xt.audio..", List.of("capture.drivers")),
          Map.entry("com.sun.jna..", List.of("capture.jack", "capture.alsa", "capture.drivers")),
          Map.entry("com.fasterxml..", List.of("report.form")),
          Map.entry("org.jfree..", List.of("report.plot")),
          Map.entry("java.awt..", List.of("report.plot")),
          Map.entry("j2html..", List.of("report.html")),
          Map.entry("picocli..", List.of("cli", "cli.command", "cli.option", "cli.terminal")),
          Map.entry("io.javalin..", List.of("screen.web")),
          Map.entry("org.eclipse.jetty..", List.of("screen.web")),
          Map.entry("jakarta..", List.of("screen.web")),
          Map.entry("kotlin..", List.of("screen.web")),
          Map.entry("io.nayuki..", List.of("screen.web")),
          Map.entry("io.prometheus..", List.of("metrics")),
          Map.entry("com.sun.net.httpserver..", List.of("metrics")),
          Map.entry("org.sqlite..", List.of("journal.store")),
          Map.entry("org.postgresql..", List.of("journal.store")),
          Map.entry("org.flywaydb..", List.of("journal.store")),
          Map.entry("java.sql..", List.of("journal.store")));

  @Test
  void seesTheWholeProject() {
    assertTrue(CLASSES.size() > 200, "only " + CLASSES.size() + " classes seen");
    for (String part : MAY_USE.keySet()) {
      assertTrue(
          CLASSES.stream().anyMatch(c -> c.getPackageName().equals(name(part))),
          "no class seen in " + part);
    }
  }

  @TestFactory
  Stream<DynamicTest> eachPackageUsesOnlyThoseBelowIt() {
    return MAY_USE.entrySet().stream()
        .map(entry -> DynamicTest.dynamicTest(entry.getKey(), () -> layer(entry).check(CLASSES)));
  }

  private static ArchRule layer(Map.Entry<String, List<String>> entry) {
    List<String> allowed = new ArrayList<>(entry.getValue());
    allowed.add(entry.getKey());
    return classes()
        .that()
        .resideInAPackage(name(entry.getKey()))
        .should()
        .onlyDependOnClassesThat(
            describe(
                "lie in " + allowed + " or outside the project",
                (JavaClass c) ->
                    !c.getPackageName().startsWith("dev.loopgauge")
                        || resideInAnyPackage(names(allowed)).test(c)))
        .because("data flows one way: stimulus, capture, estimate, comparison, report");
  }

  @TestFactory
  Stream<DynamicTest> librariesStayWhereTheyBelong() {
    return LIBRARIES.entrySet().stream()
        .map(
            entry ->
                DynamicTest.dynamicTest(
                    entry.getKey(),
                    () ->
                        noClasses()
                            .that()
                            .resideOutsideOfPackages(names(entry.getValue()))
                            .should()
                            .dependOnClassesThat()
                            .resideInAPackage(entry.getKey())
                            .because("a library that is used in one place can be exchanged there")
                            .allowEmptyShould(true)
                            .check(CLASSES)));
  }

  @Test
  void oneClassImportsTheFourierTransform() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("dev.loopgauge.estimate.spectrum.RealFft")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.jtransforms..")
        .because("it steers itself by static fields, which must be hidden")
        .check(CLASSES);
  }

  /** What goes in and what comes out; how it is done inside is free to change. */
  @Test
  void theEstimateIsUsedByItsWaysInItsReadingsAndItsResultsAlone() {
    noClasses()
        .that()
        .resideOutsideOfPackage("dev.loopgauge.estimate..")
        .should()
        .dependOnClassesThat(describe("lie inside the estimate", LayersTest::liesInsideEstimate))
        .because("what an estimate is made of may change without anybody else noticing")
        .check(CLASSES);
  }

  private static boolean liesInsideEstimate(JavaClass used) {
    return resideInAnyPackage(names(ESTIMATE_INSIDE)).test(used)
        || (used.getPackageName().equals(name("estimate.reading"))
            && !Set.of("Reading", "LongestDelay").contains(used.getSimpleName()));
  }

  @Test
  void nothingExitsButMain() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("dev.loopgauge.cli.Main")
        .should()
        .callMethod(System.class, "exit", int.class)
        .because("the command line is tested within one process")
        .check(CLASSES);
  }

  @Test
  void theAudioServersThreadsEnterJavaForBlocksAlone() {
    noClasses()
        .should()
        .dependOnClassesThat(describe("call back for anything else", LayersTest::callsBackForMore))
        .because("its library cancels its other threads wherever they are, see ServerNotice")
        .check(CLASSES);
  }

  /** JNAJack's own client always does, when the server ends. */
  private static boolean callsBackForMore(JavaClass used) {
    return used.getPackageName().startsWith("org.jaudiolibs")
        && !used.getSimpleName().equals("JackProcessCallback")
        && (used.isAssignableTo(Callback.class) || used.getSimpleName().equals("JackClient"));
  }

  @Test
  void oneClassWritesFiles() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("dev.loopgauge.capture.WholeFile")
        .should()
        .callMethodWhere(describe("writes a file by its name", LayersTest::writesFile))
        .because("a file is there whole or not at all")
        .check(CLASSES);
  }

  private static boolean writesFile(JavaMethodCall call) {
    return call.getTargetOwner().isEquivalentTo(Files.class)
        && List.of("write", "writeString", "newBufferedWriter", "newOutputStream", "move")
            .contains(call.getName());
  }

  @Test
  void noMutableStatics() {
    fields()
        .that()
        .areStatic()
        .should()
        .beFinal()
        .because("global state makes results depend on what ran before")
        .check(CLASSES);
  }

  @Test
  void noTwoClassesShareTheirName() {
    Map<String, List<String>> packages =
        CLASSES.stream()
            .filter(JavaClass::isTopLevelClass)
            .filter(each -> !each.getSimpleName().equals("package-info"))
            .collect(
                groupingBy(
                    JavaClass::getSimpleName,
                    TreeMap::new,
                    mapping(JavaClass::getPackageName, toList())));
    packages.values().removeIf(places -> places.size() == 1);
    assertEquals(Map.of(), packages, "rename all but one of each to what it is");
  }

  @Test
  void eachPackageSaysWhatItIsFor() {
    Path sources = Path.of("src/main/java/dev/loopgauge");
    try (Stream<Path> folders = Files.walk(sources)) {
      List<Path> silent =
          folders
              .filter(Files::isDirectory)
              .filter(folder -> !folder.equals(sources))
              .filter(folder -> !Files.exists(folder.resolve("package-info.java")))
              .filter(LayersTest::holdsClasses)
              .toList();
      assertTrue(silent.isEmpty(), "no package-info in " + silent);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean holdsClasses(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.anyMatch(file -> file.toString().endsWith(".java"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
