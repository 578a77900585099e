package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.BlockSizeServer;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.jaudiolibs.jnajack.JackClient;
import org.jaudiolibs.jnajack.JackException;

/**
 * The JACK audio server. Its devices are the server's clients: sends feed a client's input ports
 * and returns hear its output ports; {@value ServerPorts#PHYSICAL} stands for the sound card. It
 * uses the server that {@code JACK_DEFAULT_SERVER} names, or the usual one, and never starts one.
 */
public final class JackBackend implements BlockSizeServer {
  private static final String NAME = "jack";

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public Availability look() {
    try {
      List<AudioDevice> devices = TimedCall.of(JackBackend::devices, tooLate -> {});
      return devices.isEmpty()
          ? new Availability.Unusable(
              "The JACK server runs, but nothing on it has audio ports.",
              "Start it with a sound card, or start the program to be measured.")
          : new Availability.Usable(devices);
    } catch (CaptureException e) {
      return new Availability.Unusable(e.getMessage(), e.hint());
    }
  }

  private static List<AudioDevice> devices() throws CaptureException, JackException {
    JackAccess access = JackAccess.load();
    JackClient client = access.open("loopgauge-look");
    try {
      SampleRate rate = new SampleRate(client.getSampleRate());
      return ServerPorts.read(access.jack(), client).devices(rate);
    } finally {
      client.close();
    }
  }

  @Override
  public JackSession open(SessionRequest request) throws CaptureException {
    return TimedCall.of(() -> opened(request), JackSession::close);
  }

  @Override
  public int blockSize() throws CaptureException {
    return TimedCall.of(JackBackend::readBlockSize, tooLate -> {});
  }

  private static int readBlockSize() throws CaptureException, JackException {
    JackClient client = JackAccess.load().open("loopgauge-look");
    try {
      return client.getBufferSize();
    } finally {
      client.close();
    }
  }

  @Override
  public void setBlockSize(int samples) throws CaptureException {
    JackAccess.load();
    TimedCall.of(() -> new BlockSizeClient().set(samples), tooLate -> {});
  }

  private static JackSession opened(SessionRequest request) throws CaptureException, JackException {
    JackClients clients = JackClients.open(JackAccess.load());
    try {
      SessionInfo info = info(request, clients.rateHz(), clients.blockSize());
      addPorts(clients, request);
      AtomicReference<RunningTake> current = new AtomicReference<>();
      ServerWatch watch = new ServerWatch(current, info.bufferSamples(), info.rate().hertz());
      clients.start(current, watch);
      return new JackSession(info, clients, current, watch);
    } catch (CaptureException | JackException | RuntimeException e) {
      clients.close();
      throw e;
    }
  }

  private static SessionInfo info(SessionRequest request, int rateHz, int blockSize)
      throws CaptureException {
    SampleRate rate = new SampleRate(rateHz);
    if (!request.rate().orElse(rate).equals(rate)) {
      int asked = request.rate().get().hertz();
      throw unsupported(
          "The audio server runs at %d Hz, not at %d Hz.".formatted(rateHz, asked),
          "Leave the sample rate out, or restart the server at %d Hz.".formatted(asked));
    }
    int asked = request.bufferSamples();
    if (asked != 0 && asked != blockSize) {
      throw unsupported(
          "The audio server's block size is %d samples, not %d.".formatted(blockSize, asked),
          "Leave the buffer out, or set the server's block size to %d.".formatted(asked));
    }
    return new SessionInfo(
        NAME,
        request.output().orElse(ServerPorts.PHYSICAL),
        request.input().orElse(ServerPorts.PHYSICAL),
        rate,
        blockSize,
        true);
  }

  private static void addPorts(JackClients clients, SessionRequest request)
      throws CaptureException, JackException {
    ServerPorts ports = clients.serverPorts();
    List<String> fed = ports.fedBySends(request.output(), request.sends());
    List<String> heard = ports.heardByReturns(request.input(), request.returns());
    for (int i = 0; i < fed.size(); i++) {
      clients.addSend(request.sends().get(i), fed.get(i));
    }
    for (int i = 0; i < heard.size(); i++) {
      clients.addReturn(request.returns().get(i), heard.get(i));
    }
  }

  private static CaptureException unsupported(String text, String hint) {
    return new CaptureException(CaptureException.Kind.UNSUPPORTED_FORMAT, text, hint);
  }
}
