package dev.loopgauge.screen.web;

import dev.loopgauge.job.UsageException;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.screen.desk.Desk;
import dev.loopgauge.screen.web.Pass.May;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;

/** What a browser may order, each with what it needs for that. */
final class Orders {
  private static final int LARGEST_BODY = 4_096;
  private static final int FORBIDDEN = 403;
  private static final int TOO_LARGE = 413;
  private static final int WRONG_TYPE = 415;

  private final Desk desk;

  /** Orders to a desk. */
  Orders(Desk desk) {
    this.desk = desk;
  }

  private interface Order {
    void of(Map<String, Object> body);
  }

  /** Puts them on their addresses. */
  void on(RoutesConfig routes) {
    routes.post("/do/stop", ctx -> take(ctx, May.LOOK, body -> desk.stop()));
    routes.post("/do/measure", ctx -> take(ctx, May.PLAY, this::measure));
    routes.post("/do/check", ctx -> take(ctx, May.PLAY, b -> desk.check(needed(b, "path"))));
    routes.post("/do/apart", ctx -> take(ctx, May.PLAY, b -> desk.tellApart(needed(b, "path"))));
    routes.post("/do/watch", ctx -> take(ctx, May.PLAY, body -> desk.watch()));
    routes.post("/do/agree", ctx -> take(ctx, May.AGREE, body -> desk.agree(true)));
    routes.post("/do/leave", ctx -> take(ctx, May.PLAY, body -> desk.agree(false)));
    routes.post("/do/keep", ctx -> take(ctx, May.AGREE, this::keep));
    routes.post(
        "/do/practise", ctx -> take(ctx, May.AGREE, b -> desk.practise(needed(b, "fault"))));
  }

  private void measure(Map<String, Object> body) {
    text(body, "path")
        .ifPresentOrElse(path -> desk.measure(path, text(body, "arrival")), desk::measureAll);
  }

  private void keep(Map<String, Object> body) {
    String when = needed(body, "when");
    desk.keep(
        When.labelled(when)
            .orElseThrow(() -> new UsageException("no part of the day '" + when + "'", "reload")),
        text(body, "show"));
  }

  private static void take(Context ctx, May least, Order order) throws IOException {
    if (Guard.mayOf(ctx).compareTo(least) < 0) {
      answer(ctx, FORBIDDEN, "That is left to whoever sits at the computer.");
      return;
    }
    String type = ctx.contentType();
    if (type == null || !type.startsWith("application/json")) {
      answer(ctx, WRONG_TYPE, "expected application/json");
      return;
    }
    byte[] body;
    try (InputStream in = ctx.req().getInputStream()) {
      body =
          ctx.contentLength() > LARGEST_BODY
              ? new byte[LARGEST_BODY + 1]
              : in.readNBytes(LARGEST_BODY + 1);
    }
    if (body.length > LARGEST_BODY) {
      ctx.header("Connection", "close");
      answer(ctx, TOO_LARGE, "expected at most " + LARGEST_BODY + " bytes");
      return;
    }
    order.of(read(body));
    ctx.contentType("application/json").result("{}");
  }

  private static Map<String, Object> read(byte[] body) {
    try {
      return Json.read(new String(body, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UsageException("expected a JSON object", "reload the page");
    }
  }

  private static Optional<String> text(Map<String, Object> body, String key) {
    return body.get(key) instanceof String text ? Optional.of(text) : Optional.empty();
  }

  private static String needed(Map<String, Object> body, String key) {
    return text(body, key)
        .orElseThrow(() -> new UsageException("expected '" + key + "', a text", "reload the page"));
  }

  private static void answer(Context ctx, int status, String why) {
    ctx.status(status).contentType("text/plain;charset=utf-8").result(why);
  }
}
