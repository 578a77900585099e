package dev.loopgauge.report.form;

import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * What a record is made of. Java finds that out anew each time it is asked, which would take most
 * of the time of reading a journal, so it is asked once for each record.
 *
 * @param parts its components, in their order
 * @param constructor makes the record of all of them
 */
record Shape(List<Part> parts, Constructor<?> constructor) {
  /** The components that stand for keys which Java keeps for itself. */
  private static final Map<String, String> KEPT_BY_JAVA = Map.of("ret", "return", "fresh", "new");

  private static final ClassValue<Shape> SHAPES =
      new ClassValue<>() {
        @Override
        protected Shape computeValue(Class<?> kind) {
          return made(kind);
        }
      };

  /**
   * A component.
   *
   * @param name its name in Java
   * @param key its key in documents
   * @param type its type
   * @param inlined whether its own keys stand among those of the record
   * @param accessor reads it
   */
  record Part(String name, String key, Type type, boolean inlined, Method accessor) {
    private static Part of(RecordComponent component) {
      Method accessor = component.getAccessor();
      accessor.setAccessible(true);
      return new Part(
          component.getName(),
          KEPT_BY_JAVA.getOrDefault(component.getName(), component.getName()),
          component.getGenericType(),
          component.isAnnotationPresent(Inlined.class),
          accessor);
    }
  }

  /** The shape of a record. */
  static Shape of(Class<?> kind) {
    return SHAPES.get(kind);
  }

  private static Shape made(Class<?> kind) {
    RecordComponent[] components = kind.getRecordComponents();
    Class<?>[] types =
        Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
    try {
      Constructor<?> constructor = kind.getDeclaredConstructor(types);
      constructor.setAccessible(true);
      return new Shape(Arrays.stream(components).map(Part::of).toList(), constructor);
    } catch (NoSuchMethodException e) {
      throw new IllegalStateException("a record has such a constructor: " + kind, e);
    }
  }
}
