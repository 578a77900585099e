package dev.loopgauge.report.form;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Writes records as ordered maps. Each component is a key, in the order of the components: records
 * are maps, lists are lists, enums their names in small letters with hyphens; texts, numbers and
 * booleans stand as they are; files and folders are named without where they lie. An empty Optional
 * is null, or has no key where the record is {@link Sparse}. What {@link Unbinder} makes of such a
 * map is the record again.
 *
 * <p>The JSON library binds records too, but sorts their keys, can't read or write an Optional, and
 * throws at a value of another type (seen with jackson-jr 2.21.8).
 */
final class Binder {
  /** The components that stand for keys which Java keeps for itself. */
  private static final Map<String, String> KEPT_BY_JAVA = Map.of("ret", "return", "fresh", "new");

  private Binder() {}

  /** The key of a component. */
  static String key(RecordComponent component) {
    return KEPT_BY_JAVA.getOrDefault(component.getName(), component.getName());
  }

  /** The record as an ordered map. */
  static Map<String, Object> map(Record bound) {
    Set<String> leftOut = bound instanceof Sparse sparse ? sparse.leftOut() : Set.of();
    Map<String, Object> map = new LinkedHashMap<>();
    if (bound instanceof Whole) {
      map.put("schema", Whole.SCHEMA);
    }
    for (RecordComponent component : bound.getClass().getRecordComponents()) {
      Object value = value(component, bound);
      if (component.isAnnotationPresent(Inlined.class)) {
        map.putAll(map((Record) value));
      } else if (!leftOut.contains(component.getName()) || !isEmpty(value)) {
        map.put(key(component), plain(value));
      }
    }
    return map;
  }

  private static boolean isEmpty(Object value) {
    if (value instanceof List<?> list) {
      return list.isEmpty();
    }
    return value instanceof Optional<?> optional && optional.isEmpty();
  }

  private static Object plain(Object value) {
    if (value instanceof Optional<?> optional) {
      return optional.map(Binder::plain).orElse(null);
    }
    if (value instanceof List<?> list) {
      return list.stream().map(Binder::plain).toList();
    }
    if (value instanceof Enum<?> constant) {
      return label(constant);
    }
    if (value instanceof Path path) {
      return path.getFileName() == null ? "" : path.getFileName().toString();
    }
    return value instanceof Record part ? map(part) : value;
  }

  /** The name of a constant in documents. */
  static String label(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static Object value(RecordComponent component, Record of) {
    try {
      Method accessor = component.getAccessor();
      accessor.setAccessible(true);
      return accessor.invoke(of);
    } catch (IllegalAccessException | InvocationTargetException e) {
      throw new IllegalStateException("can't read " + component, e);
    }
  }
}
