package dev.loopgauge.architecture.planted;

import java.io.StringReader;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.TimeZone;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.function.LongSupplier;
import java.util.stream.IntStream;

/** One class for each thing that the core must not do. Nothing runs them. */
@SuppressWarnings({"DefaultCharset", "StringCaseLocaleUsage", "AnnotateFormatMethod"})
public final class Impure {
  private Impure() {}

  /** A clock by name. */
  record AsksClock() {
    long now() {
      return Clock.systemUTC().millis();
    }
  }

  /** A clock by another name, as a function. */
  record HandsOutClock() {
    LongSupplier clock() {
      return System::nanoTime;
    }
  }

  /** The machine's variables. */
  record ReadsEnvironment() {
    String home() {
      return System.getenv("HOME");
    }
  }

  /** The virtual machine's properties. */
  record ReadsProperty() {
    String folder() {
      return System.getProperty("user.dir");
    }
  }

  /** The process's streams. */
  record Prints() {
    void print() {
      System.out.println();
    }
  }

  /** How many cores there are. */
  record CountsCores() {
    int cores() {
      return Runtime.getRuntime().availableProcessors();
    }
  }

  /** A thread of its own. */
  record StartsThread() {
    void start() {
      new Thread().start();
    }
  }

  /** Values that belong to a thread. */
  record KeepsByThread(ThreadLocal<String> kept) {}

  /** Somebody else's threads. */
  record TakesExecutor(Executor threads) {}

  /** Threads of a pool. */
  record MakesPool() {
    Object pool() {
      return Executors.newCachedThreadPool();
    }
  }

  /** Work that ends some time. */
  record Promises(CompletableFuture<String> later) {}

  /** A parallel stream of numbers. */
  record GoesParallel() {
    int sum() {
      return IntStream.range(0, 9).parallel().sum();
    }
  }

  /** A parallel stream of a collection. */
  record StreamsInParallel(List<String> names) {
    long count() {
      return names.parallelStream().count();
    }
  }

  /** A parallel sort. */
  record SortsInParallel() {
    void sort(double[] values) {
      Arrays.parallelSort(values);
    }
  }

  /** A monitor. */
  record Waits() {
    synchronized void wake() {
      notifyAll();
    }
  }

  /** A file. */
  record TakesFile() {
    int count(Path... files) {
      return files.length;
    }
  }

  /** A stream of characters. */
  record Reads() {
    Object reader() {
      return new StringReader("");
    }
  }

  /** A resource on the class path. */
  record ReadsResource() {
    Object resource() {
      return String.class.getResource("String.class");
    }
  }

  /** Chance with a seed. */
  record Draws(Random random) {}

  /** Chance that splits. */
  record DrawsAndSplits(SplittableRandom random) {}

  /** Chance of the virtual machine. */
  record DrawsFromMath() {
    double drawn() {
      return Math.random();
    }
  }

  /** Chance in a name. */
  record NamesByChance() {
    String name() {
      return UUID.randomUUID().toString();
    }
  }

  /** Chance in an order. */
  record Shuffles() {
    void shuffle(List<String> names) {
      Collections.shuffle(names);
    }
  }

  /** The machine's language. */
  record AsksLanguage() {
    Locale language() {
      return Locale.getDefault();
    }
  }

  /** The machine's language, unseen. */
  record FormatsInLanguage(int samples) {
    String text() {
      return "%d samples".formatted(samples);
    }
  }

  /** The machine's language, unseen as well. */
  record FormatsInLanguageToo(int samples) {
    String text() {
      return String.format("%d samples", samples);
    }
  }

  /** The machine's language in letters. */
  record LowersInLanguage(String name) {
    String lower() {
      return name.toLowerCase();
    }
  }

  /** The machine's bytes. */
  record EncodesAsMachineDoes(String name) {
    int length() {
      return name.getBytes().length;
    }
  }

  /** The machine's time zone. */
  record AsksTimeZone() {
    Object zone() {
      return TimeZone.getDefault();
    }
  }
}
