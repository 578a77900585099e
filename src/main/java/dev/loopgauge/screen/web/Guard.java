package dev.loopgauge.screen.web;

import dev.loopgauge.screen.web.Pass.May;
import io.javalin.http.Context;
import java.util.Optional;
import java.util.Set;

/**
 * Stands before everything that is served. A page of somebody else, open in the same browser, must
 * neither read nor order anything: not by asking for our address under its own name (DNS rebinding:
 * the Host header), not by sending from its own origin (the Origin header), not by framing the
 * page.
 */
final class Guard {
  /** Where the page keeps what it may do. */
  static final String MAY = "may";

  /** Nothing that isn't ours is loaded or asked, whatever stands on the page. */
  static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self';"
          + " base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

  private static final Set<String> READING = Set.of("GET", "HEAD");
  private static final int FORBIDDEN = 403;

  private final Pass pass;
  private final Set<String> hosts;
  private final String cookie;

  /**
   * A guard.
   *
   * @param hosts the addresses that the server is asked for by, with their ports
   * @param port part of the cookie's name: browsers send a cookie to every port of a computer
   */
  Guard(Pass pass, Set<String> hosts, int port) {
    this.pass = pass;
    this.hosts = Set.copyOf(hosts);
    this.cookie = "loopgauge-" + port;
  }

  /** Lets a request pass, or answers it. */
  void check(Context ctx) {
    headers(ctx);
    String host = ctx.header("Host");
    if (host == null || !hosts.contains(host)) {
      refuse(ctx, "This address is not the screen's: open the one that it printed.");
      return;
    }
    String origin = ctx.header("Origin");
    boolean ordered = !READING.contains(ctx.req().getMethod());
    if (origin == null ? ordered : !origin.equals("http://" + host)) {
      refuse(ctx, "This came from another page.");
      return;
    }
    Optional<May> may = may(ctx);
    if (may.isEmpty()) {
      refuse(ctx, "Open the address that `loopgauge screen` printed, with its token.");
      return;
    }
    ctx.attribute(MAY, may.get());
  }

  private static void headers(Context ctx) {
    ctx.header("Content-Security-Policy", POLICY)
        .header("X-Content-Type-Options", "nosniff")
        .header("X-Frame-Options", "DENY")
        .header("Referrer-Policy", "no-referrer")
        .header("Cross-Origin-Resource-Policy", "same-origin")
        .header("Cross-Origin-Opener-Policy", "same-origin")
        .header("Cache-Control", "no-store");
  }

  /** By the cookie, or by the address that was printed: then the cookie is set for what follows. */
  private Optional<May> may(Context ctx) {
    String given = ctx.path().equals("/") ? ctx.queryParam("token") : null;
    if (given == null) {
      return Optional.ofNullable(ctx.cookie(cookie)).flatMap(pass::of);
    }
    Optional<May> may = pass.of(given);
    if (may.isPresent()) {
      ctx.header("Set-Cookie", cookie + "=" + given + "; Path=/; HttpOnly; SameSite=Strict");
    }
    return may;
  }

  private static void refuse(Context ctx, String why) {
    ctx.status(FORBIDDEN).contentType("text/plain;charset=utf-8").result(why);
    ctx.header("Connection", "close").skipRemainingHandlers();
  }

  /** What whoever asks may do. */
  static May mayOf(Context ctx) {
    May may = ctx.attribute(MAY);
    return may == null ? May.LOOK : may;
  }
}
