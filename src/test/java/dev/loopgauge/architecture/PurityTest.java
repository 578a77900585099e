package dev.loopgauge.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.EvaluationResult;
import dev.loopgauge.architecture.planted.Impure;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The core takes time, seeds and text as arguments, so that each result can be repeated. */
class PurityTest {
  private static final ArchRule PURE =
      classes()
          .should(new Pure(resideInAnyPackage(Project.names(Project.PURE))))
          .because(
              "time, seeds and text come in as arguments, so that each result can be repeated");

  private static EvaluationResult judged(JavaClasses classes) {
    return PURE.evaluate(classes);
  }

  private static JavaClasses core() {
    return Project.CLASSES.that(resideInAnyPackage(Project.names(Project.PURE)));
  }

  @Test
  void theCoreIsPure() {
    assertTrue(core().size() > 150, () -> "only " + core().size() + " classes seen");
    PURE.check(core());
  }

  static Stream<Class<?>> impure() {
    return Stream.of(Impure.class.getDeclaredClasses());
  }

  @ParameterizedTest
  @MethodSource("impure")
  void whatIsNotPureIsFound(Class<?> planted) {
    assertTrue(judged(new ClassFileImporter().importClasses(planted)).hasViolation());
  }

  /** As pure as can be, with a record, a lambda, a stream, an enum's switch and text. */
  record Blameless(String name, Thing thing) {
    enum Thing {
      ONE,
      OTHER
    }

    String text() {
      String shown =
          switch (thing) {
            case ONE -> name.toLowerCase(Locale.ROOT);
            case OTHER -> String.format(Locale.ROOT, "%d", name.length());
          };
      return Stream.of(shown).map(s -> s + thing).toList().toString();
    }
  }

  @Test
  void whatIsPureIsLetPass() {
    ArchRule here =
        classes()
            .should(new Pure((JavaClass c) -> c.getName().startsWith(Blameless.class.getName())));
    JavaClasses blameless =
        new ClassFileImporter().importClasses(Blameless.class, Blameless.Thing.class);
    EvaluationResult result = here.evaluate(blameless);
    assertFalse(result.hasViolation(), () -> result.getFailureReport().toString());
    assertEquals(2, blameless.size());
  }
}
