package dev.loopgauge.screen;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Asks a screen by bare sockets, as a browser, or as somebody who is up to no good. */
final class Asker {
  private static final int PATIENCE_MS = 30_000;

  final int port;
  final String token;
  private final String place;
  private final List<String> headers = new ArrayList<>();
  private String host;
  private String origin;

  /** By an address that the screen gave out. */
  Asker(String address) {
    String base = address.substring("http://".length(), address.indexOf("/?"));
    place = base.substring(0, base.indexOf(':'));
    port = Integer.parseInt(base.substring(base.indexOf(':') + 1));
    token = address.substring(address.indexOf('=') + 1);
    host = place + ":" + port;
    origin = "http://" + host;
  }

  private Asker(Asker as, String token) {
    place = as.place;
    port = as.port;
    this.token = token;
    host = as.host;
    origin = as.origin;
    headers.addAll(as.headers);
  }

  Asker token(String other) {
    return new Asker(this, other);
  }

  Asker host(String other) {
    Asker asker = new Asker(this, token);
    asker.host = other;
    return asker;
  }

  /** With this origin; without any where it is empty. */
  Asker origin(String other) {
    Asker asker = new Asker(this, token);
    asker.origin = other;
    return asker;
  }

  Asker header(String line) {
    Asker asker = new Asker(this, token);
    asker.headers.add(line);
    return asker;
  }

  /** The whole answer to a GET. */
  String get(String path) throws IOException {
    return whole(begin("GET", path, "", "Connection: close"));
  }

  /** The whole answer to an order. */
  String post(String path, String body) throws IOException {
    return whole(
        begin(
            "POST",
            path,
            body,
            "Content-Type: application/json",
            "Content-Length: " + body.length(),
            "Connection: close"));
  }

  /** Sends a request and leaves the rest open. */
  Socket begin(String method, String path, String body, String... more) throws IOException {
    Socket socket = connect();
    StringBuilder request = new StringBuilder(method + " " + path + " HTTP/1.1\r\n");
    request.append("Host: ").append(host).append("\r\n");
    if (!origin.isEmpty() && method.equals("POST")) {
      request.append("Origin: ").append(origin).append("\r\n");
    }
    if (!token.isEmpty()) {
      request.append("Cookie: loopgauge-" + port + "=" + token + "\r\n");
    }
    headers.forEach(line -> request.append(line).append("\r\n"));
    for (String line : more) {
      request.append(line).append("\r\n");
    }
    request.append("\r\n").append(body);
    socket.getOutputStream().write(request.toString().getBytes(StandardCharsets.UTF_8));
    socket.getOutputStream().flush();
    return socket;
  }

  /** A connection that says nothing. */
  Socket connect() throws IOException {
    Socket socket = new Socket(InetAddress.getByName(place), port);
    socket.setSoTimeout(PATIENCE_MS);
    return socket;
  }

  private static String whole(Socket socket) throws IOException {
    try (socket;
        InputStream in = socket.getInputStream()) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** The code of an answer. */
  static int code(String answer) {
    return Integer.parseInt(answer.substring(9, 12));
  }
}
