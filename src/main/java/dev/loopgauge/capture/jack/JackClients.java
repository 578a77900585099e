package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.PortLatency;
import dev.loopgauge.capture.SessionInfo;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.jaudiolibs.jnajack.JackLatencyCallbackMode;
import org.jaudiolibs.jnajack.JackPortFlags;

/** The two clients of a session, their ports and their patches. */
final class JackClients {
  private final ServerClient player;
  private final ServerClient recorder;
  private final List<PortPatch> sends = new ArrayList<>();
  private final List<PortPatch> returns = new ArrayList<>();

  private JackClients(ServerClient player, ServerClient recorder) {
    this.player = player;
    this.recorder = recorder;
  }

  static JackClients open(ServerLibrary library) throws CaptureException {
    ServerClient player = library.open("loopgauge-play");
    try {
      return new JackClients(player, library.open("loopgauge-record"));
    } catch (CaptureException e) {
      player.close();
      throw e;
    }
  }

  ServerPorts serverPorts() {
    return ServerPorts.read(player);
  }

  int rateHz() {
    return player.rateHz();
  }

  int blockSize() {
    return player.blockSize();
  }

  /** Makes the port of a send, to be patched to the rig's port {@code fed}. */
  void addSend(int channel, String fed) throws CaptureException {
    ServerPort port = player.register("send_" + channel, JackPortFlags.JackPortIsOutput);
    sends.add(new PortPatch(port, fed));
  }

  /** Makes the port of a return, to be patched to the rig's port {@code heard}. */
  void addReturn(int channel, String heard) throws CaptureException {
    ServerPort port = recorder.register("return_" + channel, JackPortFlags.JackPortIsInput);
    returns.add(new PortPatch(port, heard));
  }

  /** Lets the server run both clients, and patches their ports. */
  ServerWatch start(AtomicReference<Running> current, SessionInfo info) throws CaptureException {
    int blockSize = info.bufferSamples();
    ServerWatch watch = new ServerWatch(recorder, blockSize, info.rate().hertz());
    player.activate(new PlayCallback(player, ports(sends), blockSize, current, watch));
    recorder.activate(new RecordCallback(recorder, ports(returns), blockSize, current, watch));
    for (PortPatch send : sends) {
      player.connect(send.own().name(), send.other());
    }
    for (PortPatch heard : returns) {
      recorder.connect(heard.other(), heard.own().name());
    }
    return watch;
  }

  private static List<ServerPort> ports(List<PortPatch> patches) {
    return patches.stream().map(PortPatch::own).toList();
  }

  /** Throws when a patch is no longer there. */
  void checkPatches() throws CaptureException {
    for (PortPatch send : sends) {
      send.check();
    }
    for (PortPatch heard : returns) {
      heard.check();
    }
  }

  /** What the graph reports from a send on to its listeners; {@code index} from 0. */
  PortLatency sendLatency(int index) {
    return sends.get(index).own().latency(JackLatencyCallbackMode.JackPlaybackLatency);
  }

  /** What the graph reports from the sources up to a return; {@code index} from 0. */
  PortLatency returnLatency(int index) {
    return returns.get(index).own().latency(JackLatencyCallbackMode.JackCaptureLatency);
  }

  int sendCount() {
    return sends.size();
  }

  int returnCount() {
    return returns.size();
  }

  /** Leaves the server; one that doesn't let go is left behind. Never throws. */
  void close() {
    try {
      ServerLibrary.TIMED.of(this::leave, done -> {});
    } catch (CaptureException e) {
      // The server is stuck, and there is nothing left to lose.
    }
  }

  private Void leave() {
    player.close();
    recorder.close();
    return null;
  }
}
