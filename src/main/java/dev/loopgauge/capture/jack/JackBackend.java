package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.BlockSizeServer;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.FlowLimit;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;

/**
 * The JACK audio server. Its devices are the server's clients: sends feed a client's input ports
 * and returns hear its output ports; {@value ServerPorts#PHYSICAL} stands for the sound card. It
 * uses the server that {@code JACK_DEFAULT_SERVER} names, or the default one, and never starts one.
 */
public final class JackBackend implements BlockSizeServer {
  private static final String NAME = "jack";
  private static final int MOST_LOOKS = 200;

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public boolean hasGraph() {
    return true;
  }

  @Override
  public Availability look() {
    try {
      List<AudioDevice> devices = ServerLibrary.TIMED.of(JackBackend::devices, tooLate -> {});
      return devices.isEmpty()
          ? new Availability.Unusable(
              "The JACK server runs, but nothing on it has audio ports.",
              "Start it with a sound card, or start the program to be measured.")
          : new Availability.Usable(devices);
    } catch (CaptureException e) {
      return new Availability.Unusable(e.getMessage(), e.hint());
    }
  }

  private static List<AudioDevice> devices() throws CaptureException {
    try (ServerClient client = lookingClient()) {
      return ServerPorts.read(client).devices(new SampleRate(client.rateHz()));
    }
  }

  private static ServerClient lookingClient() throws CaptureException {
    return ServerLibrary.load().open("loopgauge-look");
  }

  @Override
  public JackSession open(SessionRequest request) throws CaptureException {
    return ServerLibrary.TIMED.of(() -> opened(request), JackSession::close);
  }

  @Override
  public int blockSize() throws CaptureException {
    return ServerLibrary.TIMED.of(JackBackend::readBlockSize, tooLate -> {});
  }

  private static int readBlockSize() throws CaptureException {
    try (ServerClient client = lookingClient()) {
      return client.blockSize();
    }
  }

  @Override
  public void setBlockSize(int samples) throws CaptureException {
    ServerLibrary.TIMED.of(() -> changedTo(samples), tooLate -> {});
  }

  /** Sets the block size and waits until the server runs at it. */
  private static int changedTo(int samples) throws CaptureException {
    try (ServerClient client = ServerLibrary.load().open("loopgauge-blocks")) {
      client.askForBlockSize(samples);
      for (int look = 0; look < MOST_LOOKS && client.blockSize() != samples; look++) {
        FlowLimit.pause();
      }
      if (client.blockSize() != samples) {
        throw unsupported(
            "The audio server stays at a block of %d samples, not %d."
                .formatted(client.blockSize(), samples),
            "Choose block sizes that the sound card can run at.");
      }
      return samples;
    }
  }

  private static JackSession opened(SessionRequest request) throws CaptureException {
    JackClients clients = JackClients.open(ServerLibrary.load());
    try {
      SessionInfo info = info(request, clients.rateHz(), clients.blockSize());
      addPorts(clients, request);
      AtomicReference<Running> current = new AtomicReference<>();
      return new JackSession(info, clients, current, clients.start(current, info));
    } catch (CaptureException | RuntimeException e) {
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
      throws CaptureException {
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
