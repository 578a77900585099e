package dev.loopgauge.report.form;

import java.lang.reflect.InvocationTargetException;
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
  private Binder() {}

  /** The record as an ordered map. */
  static Map<String, Object> map(Record bound) {
    Set<String> leftOut = bound instanceof Sparse sparse ? sparse.leftOut() : Set.of();
    Map<String, Object> map = new LinkedHashMap<>();
    if (bound instanceof Whole) {
      map.put("schema", Whole.SCHEMA);
    }
    for (Shape.Part part : Shape.of(bound.getClass()).parts()) {
      Object value = value(part, bound);
      if (part.inlined()) {
        map.putAll(map((Record) value));
      } else if (!leftOut.contains(part.name()) || !isEmpty(value)) {
        map.put(part.key(), plain(value));
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

  private static Object value(Shape.Part part, Record of) {
    try {
      return part.accessor().invoke(of);
    } catch (IllegalAccessException | InvocationTargetException e) {
      throw new IllegalStateException("can't read " + part, e);
    }
  }
}
