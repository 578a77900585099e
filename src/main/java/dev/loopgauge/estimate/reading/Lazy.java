package dev.loopgauge.estimate.reading;

import java.util.function.Supplier;

/** A value that is worked out when it is first asked for, and kept. For one thread. */
public final class Lazy<T> {
  private final Supplier<T> source;
  private T value;

  /** A value from a source, which gives no null. */
  public Lazy(Supplier<T> source) {
    this.source = source;
  }

  /** The value. */
  public T get() {
    if (value == null) {
      value = source.get();
    }
    return value;
  }
}
