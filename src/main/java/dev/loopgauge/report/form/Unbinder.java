package dev.loopgauge.report.form;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Makes records of the maps that {@link Binder} and other versions of this program write. Unknown
 * keys are passed over. A value of another type, or one that the record's constructor refuses,
 * counts as left out. What is left out is an empty Optional or list; where it is neither, the
 * record that needs it is left out too.
 */
public final class Unbinder {
  /** Far beyond any figure of a document; keeps 1e999999999 from filling the memory. */
  private static final int MOST_DIGITS = 400;

  private Unbinder() {}

  /** The record; empty where something is missing that it can't be without. */
  public static <T extends Record> Optional<T> read(Class<T> kind, Map<?, ?> map) {
    return record(kind, map).map(kind::cast);
  }

  private static Optional<Object> record(Class<?> kind, Map<?, ?> map) {
    Shape shape = Shape.of(kind);
    Object[] values = new Object[shape.parts().size()];
    for (int i = 0; i < values.length; i++) {
      Optional<Object> value = value(shape.parts().get(i), map);
      if (value.isEmpty()) {
        return Optional.empty();
      }
      values[i] = value.get();
    }
    return made(shape, values);
  }

  private static Optional<Object> value(Shape.Part part, Map<?, ?> map) {
    return part.inlined()
        ? record((Class<?>) part.type(), map)
        : value(part.type(), map.get(part.key()));
  }

  private static Optional<Object> made(Shape shape, Object[] values) {
    try {
      return Optional.of(shape.constructor().newInstance(values));
    } catch (InvocationTargetException refused) {
      return Optional.empty();
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("can't use " + shape.constructor(), e);
    }
  }

  private static Optional<Object> value(Type type, Object found) {
    if (type instanceof ParameterizedType generic) {
      Type of = generic.getActualTypeArguments()[0];
      if (generic.getRawType() == Optional.class) {
        return Optional.of(found == null ? Optional.empty() : value(of, found));
      }
      return generic.getRawType() == List.class ? list(of, found) : map(found);
    }
    Class<?> kind = (Class<?>) type;
    if (kind.isRecord()) {
      return found instanceof Map<?, ?> part ? record(kind, part) : Optional.empty();
    }
    return kind.isEnum() ? constant(kind, found) : plain(kind, found);
  }

  /** Of parts, those that can be read; of plain values all or none. */
  private static Optional<Object> list(Type of, Object found) {
    List<Object> values = new ArrayList<>();
    List<?> all = found instanceof List<?> list ? list : List.of();
    all.forEach(element -> value(of, element).ifPresent(values::add));
    boolean parts = of instanceof Class<?> kind && kind.isRecord();
    boolean whole = parts || values.size() == all.size();
    return Optional.of(whole ? List.copyOf(values) : List.of());
  }

  private static Optional<Object> map(Object found) {
    Map<String, Object> map = new LinkedHashMap<>();
    if (found instanceof Map<?, ?> values) {
      values.forEach((key, value) -> map.put(String.valueOf(key), value));
    }
    return Optional.of(map);
  }

  private static Optional<Object> constant(Class<?> kind, Object found) {
    return Arrays.stream(kind.getEnumConstants())
        .filter(constant -> Binder.label((Enum<?>) constant).equals(found))
        .findFirst()
        .map(constant -> constant);
  }

  private static Optional<Object> plain(Class<?> kind, Object found) {
    if (kind == boolean.class || kind == Boolean.class) {
      return Optional.ofNullable(found).filter(Boolean.class::isInstance);
    }
    if (kind == String.class) {
      return Optional.ofNullable(found).filter(String.class::isInstance);
    }
    if (kind == int.class || kind == Integer.class) {
      return number(found).flatMap(Unbinder::whole);
    }
    if (kind == Path.class) {
      return Optional.ofNullable(found).filter(String.class::isInstance).flatMap(Unbinder::path);
    }
    if (kind == BigDecimal.class) {
      return number(found).map(number -> number);
    }
    throw new IllegalStateException("documents have no " + kind);
  }

  private static Optional<Object> path(Object name) {
    try {
      return Optional.of(Path.of((String) name));
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  private static Optional<BigDecimal> number(Object found) {
    if (found instanceof Double || found instanceof Float) {
      double value = ((Number) found).doubleValue();
      return Double.isFinite(value) ? Optional.of(BigDecimal.valueOf(value)) : Optional.empty();
    }
    if (found instanceof BigDecimal exact) {
      boolean bounded = exact.precision() <= MOST_DIGITS && Math.abs(exact.scale()) <= MOST_DIGITS;
      return Optional.of(exact).filter(number -> bounded && Double.isFinite(number.doubleValue()));
    }
    return found instanceof Number number
        ? number(new BigDecimal(number.toString()))
        : Optional.empty();
  }

  private static Optional<Object> whole(BigDecimal number) {
    try {
      return Optional.of(number.intValueExact());
    } catch (ArithmeticException fraction) {
      return Optional.empty();
    }
  }
}
