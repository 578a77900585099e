package dev.loopgauge.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.screen.web.Sharing;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The screen against those who shall not read it, not order it, and not hold it up. */
@Timeout(120)
class GuardTest {
  private static final int FORBIDDEN = 403;

  @TempDir private static Path folder;
  private static Served screen;
  private static Asker own;
  private static Asker other;

  @BeforeAll
  static void serve() throws Exception {
    screen = Served.demo(folder, Sharing.LOOK);
    own = new Asker(screen.server.address());
    List<String> shared = screen.server.shared();
    other = own.token(new Asker(shared.get(shared.size() - 1)).token);
  }

  @AfterAll
  static void end() {
    screen.close();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/events",
        "/what-if?block=128",
        "/report",
        "/screen.js",
        "/watch.js",
        "/nothing"
      })
  void givesNothingToWhoHasNoTokenOrAWrongOne(String path) throws IOException {
    String near = own.token.substring(1) + (own.token.endsWith("A") ? "B" : "A");
    for (String token : List.of("", "x", near, own.token + "A")) {
      String answer = own.token(token).get(path);
      assertEquals(FORBIDDEN, Asker.code(answer), answer);
      assertFalse(answer.contains("Lantern"), answer);
    }
  }

  @Test
  void theTokenOfTheAddressBecomesACookieThatScriptsAndOtherSitesDoNotGet() throws IOException {
    String answer = own.token("").get("/?token=" + own.token);
    assertEquals(200, Asker.code(answer), answer);
    assertTrue(
        answer.contains(
            "Set-Cookie: loopgauge-"
                + own.port
                + "="
                + own.token
                + "; Path=/; HttpOnly; SameSite=Strict"),
        answer);
    assertEquals(200, Asker.code(own.get("/")));
    assertEquals(FORBIDDEN, Asker.code(own.token("").get("/?token=wrong")));
    assertEquals(FORBIDDEN, Asker.code(own.token("").get("/report?token=" + own.token)));
  }

  /** A name that an attacker's DNS leads to 127.0.0.1 is still the attacker's. */
  @ParameterizedTest
  @ValueSource(
      strings = {"attacker.example", "127.0.0.1", "127.0.0.1:1", "127.0.0.1.attacker.example"})
  void answersToItsOwnHostsAlone(String host) throws IOException {
    assertEquals(FORBIDDEN, Asker.code(own.host(host).get("/")));
    assertTrue(Asker.code(own.host(host + ":x").get("/events")) >= 400);
    assertEquals(200, Asker.code(own.host("localhost:" + own.port).get("/")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "null", "http://attacker.example", "http://127.0.0.1:1", "https://localhost"})
  void takesOrdersFromItsOwnPageAlone(String origin) throws IOException {
    assertEquals(FORBIDDEN, Asker.code(own.origin(origin).post("/do/measure", "{}")));
    assertEquals(200, Asker.code(own.post("/do/stop", "{}")));
  }

  @Test
  void aFormOfAnotherPageCanNotOrder() throws IOException {
    String form = "path=vocal-house";
    try (Socket socket =
        own.begin(
            "POST",
            "/do/measure",
            form,
            "Content-Type: application/x-www-form-urlencoded",
            "Content-Length: " + form.length(),
            "Connection: close")) {
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertEquals(415, Asker.code(answer), answer);
    }
  }

  @Test
  void forbidsEverythingForeign() throws IOException {
    String answer = own.header("Origin: http://127.0.0.1:" + own.port).get("/");
    assertTrue(answer.contains("Content-Security-Policy: default-src 'none'; script-src 'self'"));
    assertTrue(answer.contains("frame-ancestors 'none'"));
    assertTrue(answer.contains("Referrer-Policy: no-referrer"));
    assertTrue(answer.contains("X-Content-Type-Options: nosniff"));
    assertTrue(answer.contains("Cache-Control: no-store"));
    assertFalse(answer.contains("Access-Control-"), answer);
    assertFalse(answer.toLowerCase(Locale.ROOT).contains("jetty"), answer);
  }

  @Test
  void readsNoHugeBody() throws IOException {
    try (Socket socket =
        own.begin(
            "POST",
            "/do/measure",
            "{",
            "Content-Type: application/json",
            "Content-Length: 1000000000")) {
      byte[] head = socket.getInputStream().readNBytes(12);
      assertEquals("HTTP/1.1 413", new String(head, StandardCharsets.UTF_8));
    }
    String large = "{\"path\":\"" + "x".repeat(5_000) + "\"}";
    assertEquals(413, Asker.code(own.post("/do/measure", large)));
    assertEquals(431, Asker.code(own.header("X: " + "x".repeat(20_000)).get("/")));
  }

  @Test
  void othersLookAndStopButDoNotPlayKeepOrAgree() throws IOException {
    assertEquals(200, Asker.code(other.get("/")));
    assertTrue(other.get("/").contains("data-may=\"look\""));
    assertEquals(200, Asker.code(other.post("/do/stop", "{}")));
    for (String order :
        List.of("measure", "apart", "check", "watch", "agree", "leave", "keep", "practise")) {
      assertEquals(FORBIDDEN, Asker.code(other.post("/do/" + order, "{}")), order);
    }
  }

  @Test
  void everyBrowserGetsTheSame() throws Exception {
    try (Following one = new Following(own);
        Following two = new Following(other)) {
      String here = one.until("\"state\"");
      String there = two.until("\"state\"");
      assertEquals(
          here.substring(here.indexOf("number")), there.substring(there.indexOf("number")));
    }
  }

  @Test
  void namesNoFolderUserOrComputer() throws Exception {
    try (Following page = new Following(own)) {
      String state = page.until("\"state\"");
      for (String secret :
          List.of(
              folder.toString(),
              System.getProperty("user.dir"),
              System.getProperty("user.home") + "/",
              InetAddress.getLocalHost().getHostName())) {
        assertFalse(state.contains(secret), secret);
      }
    }
    String failed = own.get("/report");
    assertTrue(failed.contains("there is no journal journal.db"), failed);
  }

  @Test
  void aThousandConnectionsDisturbNeitherAMeasurementNorThePagesThatAreOpen() throws Exception {
    List<Socket> held = new ArrayList<>();
    try (Following page = new Following(own)) {
      page.until("\"state\"");
      int refused = 0;
      for (int i = 0; i < 1_000; i++) {
        refused += isRefused(held) ? 1 : 0;
      }
      assertTrue(refused > 0, "all 1000 connections were taken");
      screen.desk.measure("vocal-house", Optional.empty());
      page.until("WITHIN: vocal-house");
      page.until("event: beat");
    } finally {
      for (Socket socket : held) {
        socket.close();
      }
    }
    assertEquals(200, Asker.code(own.get("/")));
  }

  private static boolean isRefused(List<Socket> held) throws IOException {
    Socket socket = new Socket();
    held.add(socket);
    try {
      socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), own.port), 5);
      return false;
    } catch (SocketTimeoutException full) {
      socket.close();
      return true;
    }
  }

  /** Those who ask for events and never read them; more of them than there are seats. */
  @Test
  void slowReadersHoldUpNobodyElse() throws Exception {
    List<Socket> slow = new ArrayList<>();
    try (Following page = new Following(own)) {
      for (int i = 0; i < 24; i++) {
        slow.add(other.begin("GET", "/events", ""));
        slow.get(i).getInputStream().readNBytes(20);
      }
      assertEquals(503, Asker.code(other.get("/events")));
      for (int i = 0; i < 300; i++) {
        screen.desk.practise(i % 2 == 0 ? "inverted" : "silent");
      }
      screen.desk.practise("");
      page.until("\"fault\":\"\"}");
      page.until("event: beat");
    } finally {
      for (Socket socket : slow) {
        socket.close();
      }
    }
  }
}
