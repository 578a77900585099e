package dev.loopgauge.estimate;

import java.util.function.Supplier;

/** A value that is worked out when it is first asked for, and kept. For one thread. */
final class Lazy<T> {
  private final Supplier<T> source;
  private T value;

  /** A value from a source, which gives no null. */
  Lazy(Supplier<T> source) {
    this.source = source;
  }

  /** The value. */
  T get() {
    if (value == null) {
      value = source.get();
    }
    return value;
  }
}
