package dev.loopgauge.architecture;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * The knots among classes: each is a strongly connected component of more than one class, in which
 * every class leads to every other: by use, or as a sealed type that permits it. A nested class
 * counts with the class around it. Found as in R. Tarjan, "Depth-first search and linear graph
 * algorithms", SIAM J. Comput. 1 (1972), from memory.
 */
final class Knots {
  /**
   * Classes that lead to one another.
   *
   * @param classes their whole names
   */
  record Knot(Set<String> classes) {
    /** The packages that they lie in. */
    Set<String> packages() {
      Set<String> packages = new TreeSet<>();
      classes.forEach(name -> packages.add(name.substring(0, name.lastIndexOf('.'))));
      return packages;
    }
  }

  private final Map<String, Set<String>> uses;
  private final Map<String, Integer> order = new HashMap<>();
  private final Map<String, Integer> reaches = new HashMap<>();
  private final Deque<String> open = new ArrayDeque<>();
  private final List<Knot> found = new ArrayList<>();

  private Knots(Map<String, Set<String>> uses) {
    this.uses = uses;
  }

  /** The knots among some classes. */
  static List<Knot> among(Iterable<JavaClass> classes) {
    Map<String, Set<String>> uses = new TreeMap<>();
    for (JavaClass each : classes) {
      Set<String> used = uses.computeIfAbsent(around(each), name -> new TreeSet<>());
      for (Dependency dependency : each.getDirectDependenciesFromSelf()) {
        used.add(around(dependency.getTargetClass().getBaseComponentType()));
      }
      permitted(each).forEach(used::add);
    }
    Knots knots = new Knots(uses);
    for (String name : uses.keySet()) {
      if (!knots.order.containsKey(name)) {
        knots.visit(name);
      }
    }
    return knots.found;
  }

  /** ArchUnit doesn't read what a sealed type permits, so the class itself is asked. */
  private static Stream<String> permitted(JavaClass each) {
    Class<?>[] permitted = each.reflect().getPermittedSubclasses();
    return permitted == null
        ? Stream.empty()
        : Arrays.stream(permitted).map(type -> around(type.getName()));
  }

  private static String around(JavaClass nested) {
    return around(nested.getName());
  }

  private static String around(String name) {
    int end = name.indexOf('$');
    return end < 0 ? name : name.substring(0, end);
  }

  private void visit(String name) {
    int own = order.size();
    order.put(name, own);
    reaches.put(name, own);
    open.push(name);
    for (String used : uses.get(name)) {
      if (!uses.containsKey(used)) {
        continue;
      }
      if (!order.containsKey(used)) {
        visit(used);
        reaches.merge(name, reaches.get(used), Math::min);
      } else if (open.contains(used)) {
        reaches.merge(name, order.get(used), Math::min);
      }
    }
    if (reaches.get(name) == own) {
      close(name);
    }
  }

  private void close(String first) {
    Set<String> together = new TreeSet<>();
    while (!together.contains(first)) {
      together.add(open.pop());
    }
    if (together.size() > 1) {
      found.add(new Knot(together));
    }
  }
}
