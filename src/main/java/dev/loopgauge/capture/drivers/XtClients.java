package dev.loopgauge.capture.drivers;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import xt.audio.XtDevice;

/** The ports of a JACK server by the client that owns them, in the server's order. */
final class XtClients {
  private final Map<String, List<Integer>> sends;
  private final Map<String, List<Integer>> returns;
  private final String id;

  XtClients(XtDevice server, Ports sends, Ports returns) {
    this.id = sends.id();
    this.sends = byClient(server, true, sends);
    this.returns = byClient(server, false, returns);
  }

  private static Map<String, List<Integer>> byClient(XtDevice server, boolean output, Ports ports) {
    Map<String, List<Integer>> clients = new LinkedHashMap<>();
    for (int channel : ports.channels()) {
      String port = server.getChannelName(output, channel);
      String client = port.substring(0, Math.max(0, port.indexOf(':')));
      clients.computeIfAbsent(client, name -> new ArrayList<>()).add(channel);
    }
    return clients;
  }

  /** Gets a client. */
  interface Client {
    void with(String name, Ports sends, Ports returns);
  }

  void forEach(Client each) {
    Set<String> names = new LinkedHashSet<>(sends.keySet());
    names.addAll(returns.keySet());
    for (String name : names) {
      each.with(name, ports(sends, name), ports(returns, name));
    }
  }

  private Ports ports(Map<String, List<Integer>> clients, String name) {
    return new Ports(id, clients.getOrDefault(name, List.of()));
  }
}
