package dev.loopgauge.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.EvaluationResult;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import dev.loopgauge.architecture.planted.egg.Egg;
import dev.loopgauge.architecture.planted.family.Child;
import dev.loopgauge.architecture.planted.family.Parent;
import dev.loopgauge.architecture.planted.hen.Hen;
import dev.loopgauge.architecture.planted.ring.Left;
import dev.loopgauge.architecture.planted.ring.Right;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Classes that use one another in a ring can be understood only together. */
class KnotsTest {
  /**
   * How many classes of a room may be knotted at most, by room; none where it isn't named. Lower a
   * number when a knot is untied; raise none. A sealed type counts with what it permits: the faults
   * of {@code capture.simulated}, the changes of {@code chain}, the stimuli of {@code signal} and
   * the filters of {@code signal.filter} are such knots. Not seen is the use of a constant, which
   * the compiler copies.
   */
  private static final Map<String, Ceiling> CEILINGS =
      Map.ofEntries(
          Map.entry("capture.file", new Ceiling(1, 2)),
          Map.entry("capture.jack", new Ceiling(1, 4)),
          Map.entry("capture.simulated", new Ceiling(1, 27)),
          Map.entry("chain", new Ceiling(3, 9)),
          Map.entry("chain.file", new Ceiling(2, 4)),
          Map.entry("job.live", new Ceiling(1, 2)),
          Map.entry("journal", new Ceiling(1, 2)),
          Map.entry("plan", new Ceiling(1, 2)),
          Map.entry("report.budget", new Ceiling(1, 2)),
          Map.entry("report.html", new Ceiling(2, 5)),
          Map.entry("report.logged", new Ceiling(2, 4)),
          Map.entry("report.measured", new Ceiling(1, 2)),
          Map.entry("report.planned", new Ceiling(2, 4)),
          Map.entry("report.series", new Ceiling(1, 2)),
          Map.entry("signal", new Ceiling(2, 7)),
          Map.entry("signal.filter", new Ceiling(2, 12)));

  private record Ceiling(int knots, int classes) {}

  /** Remembers all classes, and judges the knots among them at the end. */
  private static final class Knotted extends ArchCondition<JavaClass> {
    private final Map<String, Ceiling> ceilings;
    private final List<JavaClass> seen = new ArrayList<>();

    Knotted(Map<String, Ceiling> ceilings) {
      super("be knotted within their room only, and no more than its ceiling");
      this.ceilings = ceilings;
    }

    @Override
    public void init(Collection<JavaClass> all) {
      seen.clear();
    }

    @Override
    public void check(JavaClass each, ConditionEvents events) {
      seen.add(each);
    }

    @Override
    public void finish(ConditionEvents events) {
      Map<String, Ceiling> inside = new TreeMap<>();
      for (Knots.Knot knot : Knots.among(seen)) {
        if (knot.packages().size() > 1) {
          events.add(SimpleConditionEvent.violated(knot, "across rooms: " + knot.classes()));
        } else {
          String room = knot.packages().iterator().next().replace("dev.loopgauge.", "");
          inside.merge(room, new Ceiling(1, knot.classes().size()), Knotted::sum);
        }
      }
      inside.forEach((room, found) -> judge(room, found, events));
    }

    private static Ceiling sum(Ceiling one, Ceiling other) {
      return new Ceiling(one.knots + other.knots, one.classes + other.classes);
    }

    private void judge(String room, Ceiling found, ConditionEvents events) {
      Ceiling most = ceilings.getOrDefault(room, new Ceiling(0, 0));
      if (found.knots > most.knots || found.classes > most.classes) {
        String text = "%s: %d knots of %d classes in all, %d of %d allowed";
        Object[] numbers = {room, found.knots, found.classes, most.knots, most.classes};
        events.add(SimpleConditionEvent.violated(room, text.formatted(numbers)));
      }
    }
  }

  private static EvaluationResult judged(JavaClasses classes, Map<String, Ceiling> ceilings) {
    return ArchRuleDefinition.classes()
        .should(new Knotted(ceilings))
        .because("a ring of classes is read, tested and moved as one; across rooms it joins them")
        .evaluate(classes);
  }

  private static List<String> violations(JavaClasses classes, Map<String, Ceiling> ceilings) {
    return judged(classes, ceilings).getFailureReport().getDetails();
  }

  @Test
  void noClassIsKnottedAcrossRoomsOrMoreThanItsRoomNames() {
    assertEquals(List.of(), violations(Project.CLASSES, CEILINGS));
  }

  @Test
  void findsKnotAcrossRooms() {
    JavaClasses planted =
        new ClassFileImporter().importClasses(Hen.class, Egg.class, Egg.Chick.class);
    assertEquals(
        List.of("across rooms: [%s, %s]".formatted(Egg.class.getName(), Hen.class.getName())),
        violations(planted, CEILINGS));
  }

  @Test
  void findsKnotBeyondCeilingOfItsRoom() {
    JavaClasses planted = new ClassFileImporter().importClasses(Left.class, Right.class);
    String room = "architecture.planted.ring";
    assertEquals(
        List.of(room + ": 1 knots of 2 classes in all, 0 of 0 allowed"),
        violations(planted, CEILINGS));
    assertEquals(
        List.of(room + ": 1 knots of 2 classes in all, 1 of 1 allowed"),
        violations(planted, Map.of(room, new Ceiling(1, 1))));
    assertEquals(List.of(), violations(planted, Map.of(room, new Ceiling(1, 2))));
  }

  @Test
  void findsKnotOfSealedTypeAndWhatItPermits() {
    JavaClasses planted = new ClassFileImporter().importClasses(Parent.class, Child.class);
    String room = "architecture.planted.family";
    assertEquals(
        List.of(room + ": 1 knots of 2 classes in all, 0 of 0 allowed"),
        violations(planted, CEILINGS));
  }

  @Test
  void findsNoKnotWhereUseGoesOneWay() {
    JavaClasses oneWay = new ClassFileImporter().importClasses(KnotsTest.class, Knots.class);
    assertEquals(List.of(), violations(oneWay, Map.of()));
  }
}
