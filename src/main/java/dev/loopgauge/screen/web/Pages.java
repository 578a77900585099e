package dev.loopgauge.screen.web;

import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.screen.desk.Desk;
import dev.loopgauge.screen.desk.WhatIf;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** What a browser may read. */
final class Pages {
  private static final String HTML = "text/html;charset=utf-8";
  private static final List<String> SCRIPTS =
      List.of("screen.js", "parts.js", "watch.js", "axis.js", "page.js");

  /** The report is one file that holds its own style; it has no script. */
  private static final String REPORT_POLICY =
      "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'";

  private final Desk desk;

  /** Pages of a desk. */
  Pages(Desk desk) {
    this.desk = desk;
  }

  /** Puts them on their addresses. */
  void on(RoutesConfig routes) {
    routes.get("/", Pages::page);
    file(routes, "screen.css", "text/css;charset=utf-8");
    file(routes, "icon.svg", "image/svg+xml");
    SCRIPTS.forEach(script -> file(routes, script, "text/javascript;charset=utf-8"));
    routes.get("/what-if", this::whatIf);
    routes.get("/report", this::report);
  }

  private static void page(Context ctx) {
    String may = Guard.mayOf(ctx).label();
    ctx.contentType(HTML).result(resource("screen.html").replace("MAY", may));
  }

  private static void file(RoutesConfig routes, String name, String type) {
    routes.get("/" + name, ctx -> ctx.contentType(type).result(resource(name)));
  }

  private void whatIf(Context ctx) throws ChainFormatException {
    WhatIf question = new WhatIf(number(ctx, "block"), number(ctx, "rate"), text(ctx, "without"));
    ctx.contentType("application/json").result(Json.line(Document.json(desk.whatIf(question))));
  }

  private void report(Context ctx) throws JournalException {
    ctx.header("Content-Security-Policy", REPORT_POLICY).contentType(HTML).result(desk.report());
  }

  private static Optional<Integer> number(Context ctx, String name) {
    return text(ctx, name)
        .map(
            given -> {
              if (!given.matches("[0-9]{1,6}")) {
                throw new UsageException("expected a number for " + name, "choose one of the list");
              }
              return Integer.valueOf(given);
            });
  }

  private static Optional<String> text(Context ctx, String name) {
    return Optional.ofNullable(ctx.queryParam(name)).filter(given -> !given.isEmpty());
  }

  private static String resource(String name) {
    try (InputStream in = Pages.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
