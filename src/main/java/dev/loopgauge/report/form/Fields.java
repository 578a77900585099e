package dev.loopgauge.report.form;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A part of a document by its keys. A value of another type than expected counts as left out.
 *
 * @param values the keys and their values, as {@link Json#read} gives them
 */
public record Fields(Map<?, ?> values) {
  /** The part under a key. */
  public Optional<Fields> part(String key) {
    return values.get(key) instanceof Map<?, ?> part
        ? Optional.of(new Fields(part))
        : Optional.empty();
  }

  /** The parts in the list under a key; none where there is no list. */
  public List<Fields> parts(String key) {
    return list(key).stream()
        .filter(Map.class::isInstance)
        .map(part -> new Fields((Map<?, ?>) part))
        .toList();
  }

  /** The texts in the list under a key; none where there is no list. */
  public List<String> texts(String key) {
    return list(key).stream().filter(String.class::isInstance).map(String.class::cast).toList();
  }

  /** The numbers in the list under a key; one that is none leaves the list empty. */
  public List<Double> numbers(String key) {
    List<Double> numbers =
        list(key).stream()
            .filter(Number.class::isInstance)
            .map(number -> ((Number) number).doubleValue())
            .filter(Double::isFinite)
            .toList();
    return numbers.size() == list(key).size() ? numbers : List.of();
  }

  private List<?> list(String key) {
    return values.get(key) instanceof List<?> list ? list : List.of();
  }

  /** Whether there is anything under a key, be it null. */
  public boolean has(String key) {
    return values.containsKey(key);
  }

  /** Whether the value under a key is true. */
  public boolean is(String key) {
    return Boolean.TRUE.equals(values.get(key));
  }

  /** The text under a key. */
  public Optional<String> text(String key) {
    return values.get(key) instanceof String text ? Optional.of(text) : Optional.empty();
  }

  /** The finite number under a key. */
  public Optional<Double> number(String key) {
    return values.get(key) instanceof Number number
        ? Optional.of(number.doubleValue()).filter(Double::isFinite)
        : Optional.empty();
  }
}
