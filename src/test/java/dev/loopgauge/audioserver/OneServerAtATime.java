package dev.loopgauge.audioserver;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;

/**
 * Lets one class at a time use an audio server, whatever process runs it: two servers on few
 * processors would take each other's time, and a late cycle is a lost frame.
 */
final class OneServerAtATime implements BeforeAllCallback {
  private static final Path FILE =
      Path.of(System.getProperty("java.io.tmpdir"), "loopgauge-test-audio-server.lock");

  @Override
  public void beforeAll(ExtensionContext context) {
    context
        .getStore(Namespace.create(OneServerAtATime.class))
        .getOrComputeIfAbsent(Turn.class, key -> Turn.take(), Turn.class);
  }

  /** Held until the class that took it has ended, its nested ones included. */
  private record Turn(FileChannel channel, FileLock lock) implements AutoCloseable {
    static Turn take() {
      try {
        FileChannel channel =
            FileChannel.open(FILE, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        return new Turn(channel, channel.lock());
      } catch (IOException e) {
        throw new IllegalStateException("no turn at the audio server: " + FILE, e);
      }
    }

    @Override
    public void close() throws IOException {
      lock.release();
      channel.close();
    }
  }
}
