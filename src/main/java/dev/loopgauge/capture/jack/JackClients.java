package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.PortLatency;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.jaudiolibs.jnajack.Jack;
import org.jaudiolibs.jnajack.JackClient;
import org.jaudiolibs.jnajack.JackException;
import org.jaudiolibs.jnajack.JackLatencyCallbackMode;
import org.jaudiolibs.jnajack.JackPort;
import org.jaudiolibs.jnajack.JackPortFlags;
import org.jaudiolibs.jnajack.JackPortType;

/**
 * The two clients of a session, their ports and their patches. The server calls into them as long
 * as they are open, so whoever opened them must keep them.
 */
final class JackClients {
  private static final long SETTLE_MS = 100;

  private final Jack jack;
  private final JackClient player;
  private final JackClient recorder;
  private final List<Connection> sends = new ArrayList<>();
  private final List<Connection> returns = new ArrayList<>();
  private final List<BlockCallback> callbacks = new ArrayList<>();

  private JackClients(Jack jack, JackClient player, JackClient recorder) {
    this.jack = jack;
    this.player = player;
    this.recorder = recorder;
  }

  static JackClients open(JackAccess access) throws CaptureException {
    JackClient player = access.open("loopgauge-play");
    try {
      return new JackClients(access.jack(), player, access.open("loopgauge-record"));
    } catch (CaptureException e) {
      player.close();
      throw e;
    }
  }

  ServerPorts serverPorts() throws JackException {
    return ServerPorts.read(jack, player);
  }

  int rateHz() throws JackException {
    return player.getSampleRate();
  }

  int blockSize() throws JackException {
    return player.getBufferSize();
  }

  /** Makes the port of a send, to be patched to the rig's port {@code fed}. */
  void addSend(int channel, String fed) throws JackException {
    JackPort port =
        player.registerPort("send_" + channel, JackPortType.AUDIO, JackPortFlags.JackPortIsOutput);
    sends.add(new Connection(port, fed));
  }

  /** Makes the port of a return, to be patched to the rig's port {@code heard}. */
  void addReturn(int channel, String heard) throws JackException {
    JackPort port =
        recorder.registerPort(
            "return_" + channel, JackPortType.AUDIO, JackPortFlags.JackPortIsInput);
    returns.add(new Connection(port, heard));
  }

  /** Lets the server run both clients, and patches their ports. */
  void start(AtomicReference<RunningTake> current, ServerWatch watch) throws JackException {
    BlockCallback playing = new PlayCallback(ports(sends), blockSize(), current, watch);
    BlockCallback recording = new RecordCallback(ports(returns), blockSize(), current, watch);
    player.setProcessCallback(playing);
    recorder.setProcessCallback(recording);
    player.onShutdown(watch::ended);
    watch.listenTo(recorder);
    player.activate();
    callbacks.add(playing);
    recorder.activate();
    callbacks.add(recording);
    for (Connection send : sends) {
      jack.connect(player, send.own().getName(), send.other());
    }
    for (Connection heard : returns) {
      jack.connect(recorder, heard.other(), heard.own().getName());
    }
  }

  private static List<JackPort> ports(List<Connection> connections) {
    return connections.stream().map(Connection::own).toList();
  }

  /** Throws when a patch is no longer there. */
  void checkPatches() throws CaptureException {
    for (Connection send : sends) {
      send.check();
    }
    for (Connection heard : returns) {
      heard.check();
    }
  }

  /** What the graph reports from a send on to its listeners; {@code index} from 0. */
  PortLatency sendLatency(int index) throws JackException {
    return latency(sends.get(index), JackLatencyCallbackMode.JackPlaybackLatency);
  }

  /** What the graph reports from the sources up to a return; {@code index} from 0. */
  PortLatency returnLatency(int index) throws JackException {
    return latency(returns.get(index), JackLatencyCallbackMode.JackCaptureLatency);
  }

  private static PortLatency latency(Connection connection, JackLatencyCallbackMode mode)
      throws JackException {
    JackPort.JackLatencyRange range = new JackPort.JackLatencyRange();
    connection.own().getLatencyRange(range, mode);
    return new PortLatency(range.getMin(), range.getMax());
  }

  int sendCount() {
    return sends.size();
  }

  int returnCount() {
    return returns.size();
  }

  /** Leaves the server; a server that doesn't let go is left behind. Never throws. */
  void close() {
    try {
      TimedCall.of(this::leave, done -> {});
    } catch (CaptureException e) {
      // The server is stuck, and there is nothing left to lose.
    }
  }

  private Void leave() throws InterruptedException {
    for (BlockCallback callback : callbacks) {
      callback.leave();
    }
    // Closing cancels the server's other threads too: let what they just told us come to its end.
    Thread.sleep(SETTLE_MS);
    player.close();
    recorder.close();
    return null;
  }
}
