package dev.loopgauge.metrics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.job.UsageException;
import java.io.IOException;
import java.net.ConnectException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class MetricsServerTest {
  private final MetricsServer server = MetricsServer.start(0);
  private final int port = URI.create(server.address()).getPort();

  @AfterEach
  void close() {
    server.close();
  }

  /** The answer to a request as it is sent, byte for byte. */
  private String answer(String request) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private String answer(String method, String page, String host) throws IOException {
    return answer(
        method + " " + page + " HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n");
  }

  private static String status(String answer) {
    return answer.split(" ", 3)[1];
  }

  @ParameterizedTest
  @ValueSource(strings = {"localhost", "127.0.0.1", "[::1]", "LocalHost"})
  void answersItsOwnNames(String host) throws IOException {
    String answer = answer("GET", "/metrics", host + ":" + port);
    assertEquals("200", status(answer), answer);
    assertTrue(answer.contains("application/openmetrics-text; version=1.0.0"), answer);
    assertTrue(answer.endsWith("# EOF\n"), answer);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "rebound.example:PORT",
        "localhost.rebound.example:PORT",
        "127.0.0.1",
        "localhost:1",
        "127.0.0.2:PORT",
        "0.0.0.0:PORT",
        "user@localhost:PORT",
        ""
      })
  void refusesOtherNames(String host) throws IOException {
    String answer = answer("GET", "/metrics", host.replace("PORT", "" + port));
    assertEquals("403", status(answer), answer);
    assertTrue(!answer.contains("loopgauge_"), answer);
  }

  @Test
  void refusesNoName() throws IOException {
    assertEquals("403", status(answer("GET /metrics HTTP/1.0\r\n\r\n")));
  }

  /** Some editions of Java answer this by themselves. */
  @ParameterizedTest
  @ValueSource(strings = {", ", "\r\nHost: "})
  void refusesTwoNames(String between) throws IOException {
    String answer = answer("GET", "/metrics", "localhost:" + port + between + "rebound.example");
    assertTrue(List.of("400", "403").contains(status(answer)), answer);
    assertTrue(!answer.contains("loopgauge_"), answer);
  }

  @ParameterizedTest
  @CsvSource({"POST, /metrics, 405", "DELETE, /metrics, 405", "GET, /, 404", "GET, /metricsx, 404"})
  void answersNothingElse(String method, String page, String status) throws IOException {
    assertEquals(status, status(answer(method, page, "localhost:" + port)));
  }

  @Test
  void tellsTheLengthAloneWhereThatIsAsked() throws IOException {
    String head = answer("HEAD", "/metrics", "localhost:" + port);
    assertEquals("200", status(head), head);
    assertTrue(head.endsWith("\r\n\r\n"), head);
  }

  @Test
  void saysThatItsPortIsTaken() {
    UsageException taken = assertThrows(UsageException.class, () -> MetricsServer.start(port));
    assertEquals("port " + port + " is taken: is there a watch on it already?", taken.getMessage());
  }

  @Test
  void listensToThisComputerAlone() throws IOException {
    Optional<InetAddress> other =
        NetworkInterface.networkInterfaces()
            .flatMap(NetworkInterface::inetAddresses)
            .filter(address -> !address.isLoopbackAddress())
            .findFirst();
    InetAddress address = other.orElse(InetAddress.getByAddress(new byte[] {127, 0, 0, 2}));
    assertThrows(ConnectException.class, () -> new Socket(address, port).close());
  }
}
