package dev.loopgauge.audioserver;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;

/**
 * Lets few classes at a time use an audio server, whatever process runs them: more servers than
 * processors would take each other's time, and a late cycle is a lost frame.
 *
 * <p>A client of jackd is called from a socket in {@code /dev/shm} that has its name, but not the
 * server's: two of one name that open at the same moment on two servers take each other's. So one
 * process alone has a place, unless each has shared memory of its own, as {@code
 * src/test/own-memory/bin/java} gives it.
 */
final class PlaceForAServer implements BeforeAllCallback {
  /** Said by what starts this process. */
  static final String OWN_MEMORY = "LOOPGAUGE_OWN_MEMORY";

  private static final int MOST = 3;
  private static final long LOOK_AGAIN_MS = 50;

  @Override
  public void beforeAll(ExtensionContext context) {
    boolean alone = context.getRequiredTestClass().isAnnotationPresent(WithoutAudioServers.class);
    context
        .getStore(Namespace.create(PlaceForAServer.class))
        .getOrComputeIfAbsent(
            Held.class, key -> alone ? Held.all(places()) : Held.one(places()), Held.class);
  }

  private static int places() {
    boolean own = "1".equals(System.getenv(OWN_MEMORY));
    return own ? Math.min(MOST, Runtime.getRuntime().availableProcessors()) : 1;
  }

  /** Locked files, until the class that took them has ended, its nested ones included. */
  private record Held(List<FileChannel> places) implements AutoCloseable {
    /** Waits for the first of so many that is free. */
    static Held one(int places) {
      try {
        for (int number = 0; ; number = (number + 1) % places) {
          FileChannel place = open(number);
          if (place.tryLock() != null) {
            return new Held(List.of(place));
          }
          place.close();
          Thread.sleep(LOOK_AGAIN_MS);
        }
      } catch (IOException e) {
        throw new UncheckedIOException("no place for an audio server", e);
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }

    /** Waits for each of so many, in their order, as everybody does who takes several. */
    static Held all(int places) {
      List<FileChannel> taken = new ArrayList<>();
      try {
        for (int number = 0; number < places; number++) {
          FileChannel place = open(number);
          taken.add(place);
          place.lock();
        }
      } catch (IOException e) {
        throw new UncheckedIOException("no place for an audio server", e);
      }
      return new Held(taken);
    }

    private static FileChannel open(int number) throws IOException {
      String name = "loopgauge-test-audio-server" + (number == 0 ? "" : "-" + number) + ".lock";
      return FileChannel.open(
          Path.of(System.getProperty("java.io.tmpdir"), name),
          StandardOpenOption.CREATE,
          StandardOpenOption.WRITE);
    }

    @Override
    public void close() throws IOException {
      for (FileChannel place : places) {
        place.close();
      }
    }
  }
}
