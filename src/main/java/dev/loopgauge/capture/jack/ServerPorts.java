package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jaudiolibs.jnajack.JackPortFlags;

/**
 * The audio ports of a server, by client, in the order in which they were made. {@value #PHYSICAL}
 * stands for the ports that are sockets of a sound card, whichever client has them.
 */
final class ServerPorts {
  static final String PHYSICAL = "system";

  private final Map<String, List<String>> inputs;
  private final Map<String, List<String>> outputs;

  private ServerPorts(Map<String, List<String>> inputs, Map<String, List<String>> outputs) {
    this.inputs = inputs;
    this.outputs = outputs;
  }

  static ServerPorts read(ServerClient client) {
    return new ServerPorts(
        byClient(client, JackPortFlags.JackPortIsInput),
        byClient(client, JackPortFlags.JackPortIsOutput));
  }

  private static Map<String, List<String>> byClient(ServerClient client, JackPortFlags direction) {
    Map<String, List<String>> ports = new LinkedHashMap<>();
    for (String port : client.ports(direction)) {
      String owner = port.substring(0, port.indexOf(':'));
      ports.computeIfAbsent(owner, name -> new ArrayList<>()).add(port);
    }
    List<String> physical = client.ports(direction, JackPortFlags.JackPortIsPhysical);
    if (!physical.isEmpty()) {
      ports.put(PHYSICAL, physical);
    }
    return ports;
  }

  /** Every client that has audio ports. */
  List<AudioDevice> devices(SampleRate rate) {
    return names().stream()
        .map(
            name ->
                new AudioDevice(
                    name,
                    of(inputs, name).size(),
                    of(outputs, name).size(),
                    List.of(rate),
                    RateSource.SERVER,
                    true))
        .toList();
  }

  /** The input ports that the sends feed. */
  List<String> fedBySends(Optional<String> client, List<Integer> sends) throws CaptureException {
    return pick(inputs, "send", "input", client.orElse(PHYSICAL), sends);
  }

  /** The output ports that the returns hear. */
  List<String> heardByReturns(Optional<String> client, List<Integer> returns)
      throws CaptureException {
    return pick(outputs, "return", "output", client.orElse(PHYSICAL), returns);
  }

  private List<String> pick(
      Map<String, List<String>> ports,
      String channelKind,
      String portKind,
      String client,
      List<Integer> channels)
      throws CaptureException {
    if (!names().contains(client)) {
      throw new CaptureException(
          CaptureException.Kind.NO_SUCH_DEVICE,
          "The audio server has no client '"
              + client
              + "' with audio ports; it has "
              + String.join(", ", names())
              + ".",
          "Use one of these names, or start the program that is missing.");
    }
    List<String> there = of(ports, client);
    List<String> picked = new ArrayList<>();
    for (int channel : channels) {
      if (channel > there.size()) {
        throw new CaptureException(
            CaptureException.Kind.TOO_FEW_CHANNELS,
            "There is no %s %d: '%s' has %d %s port%s."
                .formatted(
                    channelKind,
                    channel,
                    client,
                    there.size(),
                    portKind,
                    there.size() == 1 ? "" : "s"),
            "Choose a lower %s, or give '%s' more %ss.".formatted(channelKind, client, portKind));
      }
      picked.add(there.get(channel - 1));
    }
    return picked;
  }

  private Set<String> names() {
    Set<String> names = new LinkedHashSet<>(inputs.keySet());
    names.addAll(outputs.keySet());
    return names;
  }

  private static List<String> of(Map<String, List<String>> ports, String client) {
    return ports.getOrDefault(client, List.of());
  }
}
