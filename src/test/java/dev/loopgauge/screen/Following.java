package dev.loopgauge.screen;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;

/** Follows a screen's events as a page does. */
final class Following implements AutoCloseable {
  /** One comes each second where nothing else does. */
  private static final int MOST_BEATS = 30;

  private final Socket socket;
  private final BufferedReader lines;

  /** From now on. */
  Following(Asker asker) throws IOException {
    socket = asker.begin("GET", "/events", "");
    lines =
        new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
  }

  /** Waits for a line that holds all of these words, and gives it. States may be passed over. */
  String until(String... words) throws IOException {
    String line;
    int beats = 0;
    String last = "";
    while (beats < MOST_BEATS && (line = lines.readLine()) != null) {
      if (Stream.of(words).allMatch(line::contains)) {
        return line;
      }
      last = line.contains("\"state\"") ? line : last;
      beats += line.equals("event: beat") ? 1 : 0;
    }
    throw new AssertionError("never came: " + List.of(words) + ", last: " + last);
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
