package dev.loopgauge.architecture;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * What a class of the core may use: values, collections, streams and named libraries. The rest of
 * the JDK is closed, and so is what in these packages reads a clock, starts a thread, draws a
 * number, asks the environment or depends on a default of the machine.
 */
final class Pure extends ArchCondition<JavaClass> {
  private static final Set<String> PACKAGES =
      Set.of(
          "java.lang",
          "java.lang.invoke",
          "java.lang.runtime",
          "java.math",
          "java.util",
          "java.util.concurrent.atomic",
          "java.util.function",
          "java.util.regex",
          "java.util.stream");

  /** Collections for many threads; they start none. */
  private static final Pattern CLASSES =
      Pattern.compile("java\\.util\\.concurrent\\.Concurrent\\w+");

  /** Each reads text or numbers that it is given, as it is used here. */
  private static final Pattern LIBRARIES =
      Pattern.compile(
          "(de\\.siegmar\\.fastcsv|org\\.jtransforms|org\\.visnow"
              + "|org\\.apache\\.commons\\.(statistics|numbers))\\..*");

  private static final Pattern CLOSED_CLASSES =
      Pattern.compile(
          "java\\.lang\\.(Thread\\w*|InheritableThreadLocal|Runtime|Process\\w*|ClassLoader|Module\\w*)"
              + "|java\\.util\\.(Random|SplittableRandom|UUID|Timer\\w*|Scanner|TimeZone|\\w*Calendar"
              + "|Date|Properties|ServiceLoader|\\w*ResourceBundle)");

  /** Owner, name and parameters' simple names of what must not be called. */
  private static final List<Predicate<String>> CLOSED_MEMBERS =
      List.of(
          matching("System\\.(?!arraycopy\\().*"),
          matching("(Strict)?Math\\.random\\(.*"),
          matching("Locale\\.[sg]etDefault\\(.*"),
          matching(
              "String\\.(formatted\\(.*|format\\(String, .*|to(Low|Upp)erCase\\(\\)|getBytes\\(\\))"),
          matching("String\\.<init>\\(byte\\[\\](, int, int)?\\)"),
          matching("Collections\\.shuffle\\(.*"),
          matching("Object\\.(wait|notify|notifyAll)\\(.*"),
          matching("Class\\.(forName|getResource|getResourceAsStream|getClassLoader)\\(.*"),
          matching("Throwable\\.printStackTrace\\(.*"));

  private static final Predicate<String> PARALLEL =
      matching("\\w+\\.parallel\\w*\\(.*").or(matching("StreamSupport\\..*"));

  private static final Pattern TASKS =
      Pattern.compile("java\\.util\\.concurrent\\.(ForkJoinTask|RecursiveAction)");

  private static final String PARALLEL_ONLY_IN = "dev.loopgauge.estimate.reading.InParallel";

  private final Predicate<JavaClass> project;

  /**
   * The condition.
   *
   * @param project which classes of the project may be used
   */
  Pure(Predicate<JavaClass> project) {
    super("use nothing but values that it is given");
    this.project = project;
  }

  private static Predicate<String> matching(String pattern) {
    return Pattern.compile(pattern).asMatchPredicate();
  }

  private static boolean isTask(JavaClass from, JavaClass target) {
    return from.getName().startsWith(PARALLEL_ONLY_IN + "$")
        && TASKS.matcher(target.getName()).matches();
  }

  @Override
  public void check(JavaClass each, ConditionEvents events) {
    for (Dependency dependency : each.getDirectDependenciesFromSelf()) {
      JavaClass target = dependency.getTargetClass().getBaseComponentType();
      if (!isOpen(target) && !isTask(each, target)) {
        events.add(SimpleConditionEvent.violated(each, dependency.getDescription()));
      }
    }
    for (JavaAccess<?> access : each.getAccessesFromSelf()) {
      if (isClosed(access)) {
        events.add(SimpleConditionEvent.violated(each, access.getDescription()));
      }
    }
  }

  private boolean isOpen(JavaClass used) {
    String name = used.getName();
    boolean isLibrary = CLASSES.matcher(name).matches() || LIBRARIES.matcher(name).matches();
    boolean isListed = PACKAGES.contains(used.getPackageName()) || isLibrary;
    return used.isPrimitive()
        || project.test(used)
        || (isListed && !CLOSED_CLASSES.matcher(name).matches());
  }

  private static boolean isClosed(JavaAccess<?> access) {
    String used = signature(access);
    boolean isParallel =
        PARALLEL.test(used) && !access.getOriginOwner().getName().equals(PARALLEL_ONLY_IN);
    return isParallel || CLOSED_MEMBERS.stream().anyMatch(member -> member.test(used));
  }

  /** Owner, name and, where there are any, parameters. */
  private static String signature(JavaAccess<?> access) {
    String member = access.getTarget().getOwner().getSimpleName() + "." + access.getName();
    if (access.getTarget() instanceof CodeUnitAccessTarget code) {
      List<String> types =
          code.getRawParameterTypes().stream().map(JavaClass::getSimpleName).toList();
      return member + "(" + String.join(", ", types) + ")";
    }
    return member;
  }
}
