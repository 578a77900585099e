package dev.loopgauge.screen.web;

import dev.loopgauge.screen.desk.Board;
import dev.loopgauge.screen.desk.Board.Edition;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Semaphore;

/**
 * Server-sent events: the newest state whenever there is another one, else a beat each second, by
 * which a browser knows that the server is there. Each browser has a thread of its own, which
 * another one's slow network can't hold up; a state that it was too slow for is left out.
 */
final class Events implements Handler {
  private static final int BEAT_MS = 1_000;
  private static final int UNAVAILABLE = 503;

  private final Board board;
  private final Semaphore own;
  private final Semaphore others;

  /**
   * Events of a board.
   *
   * @param own for how many pages at this computer
   * @param others for how many elsewhere
   */
  Events(Board board, int own, int others) {
    this.board = board;
    this.own = new Semaphore(own);
    this.others = new Semaphore(others);
  }

  @Override
  public void handle(Context ctx) throws IOException, InterruptedException {
    Semaphore seats = Guard.mayOf(ctx) == Pass.May.AGREE ? own : others;
    if (!seats.tryAcquire()) {
      ctx.status(UNAVAILABLE).result("too many pages are open already");
      return;
    }
    try {
      ctx.disableCompression();
      ctx.res().setContentType("text/event-stream;charset=utf-8");
      follow(ctx.res().getOutputStream());
    } catch (IOException gone) {
      // The browser left, or took nothing for too long.
    } finally {
      seats.release();
    }
  }

  private void follow(OutputStream out) throws IOException, InterruptedException {
    long seen = -1;
    while (!board.isClosed()) {
      Edition now = seen < 0 ? board.newest() : board.after(seen, BEAT_MS);
      send(out, now, now.number() != seen);
      seen = now.number();
    }
  }

  private static void send(OutputStream out, Edition edition, boolean isNew) throws IOException {
    String data =
        "{\"now\":"
            + System.currentTimeMillis()
            + ",\"number\":"
            + edition.number()
            + (isNew ? ",\"state\":" + edition.json() : "")
            + "}";
    out.write(
        ("event: " + (isNew ? "state" : "beat") + "\ndata: " + data + "\n\n")
            .getBytes(StandardCharsets.UTF_8));
    out.flush();
  }
}
