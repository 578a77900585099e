package dev.loopgauge.capture.jack;

import com.sun.jna.CallbackThreadInitializer;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;
import dev.loopgauge.capture.CaptureException;
import java.util.List;
import org.jaudiolibs.jnajack.JackPortFlags;
import org.jaudiolibs.jnajack.JackPortType;
import org.jaudiolibs.jnajack.lowlevel.JackLibrary;

/**
 * One client of the server. The server calls into it as long as it is open, so whoever opened it
 * must keep it.
 */
final class ServerClient implements AutoCloseable {
  private static final long SETTLE_MS = 100;
  private static final String AUDIO = JackPortType.AUDIO.getTypeString();

  private final JackLibrary library;
  private final JackLibrary._jack_client client;
  private final ServerNotice shutdown = new ServerNotice();
  private final ServerNotice xrun = new ServerNotice();
  private BlockCallback callback;

  /** Takes over a client that has just been opened. */
  ServerClient(JackLibrary library, JackLibrary._jack_client client) {
    this.library = library;
    this.client = client;
    tell("jack_on_shutdown", shutdown);
    tell("jack_set_xrun_callback", xrun);
  }

  private void tell(String setter, ServerNotice notice) {
    ServerLibrary.function(setter)
        .invoke(new Object[] {client, ServerNotice.WRITER, notice.word()});
  }

  /** Whether the server ended, or threw this client out. */
  boolean isGone() {
    return shutdown.came();
  }

  /** Whether the server lost time since the last time this was asked. */
  boolean lostTime() {
    return xrun.cameAnew();
  }

  int rateHz() {
    return library.jack_get_sample_rate(client);
  }

  int blockSize() {
    return library.jack_get_buffer_size(client);
  }

  /** Asks the server for another block size, which it takes some time to change to. */
  void askForBlockSize(int samples) {
    library.jack_set_buffer_size(client, samples);
  }

  /** The server's frame clock at the start of the block at hand; 32 bits, unsigned. */
  long blockTime() {
    return Integer.toUnsignedLong(library.jack_last_frame_time(client));
  }

  /** The full names of the audio ports on the server that are all of this, in order. */
  List<String> ports(JackPortFlags... flags) {
    Pointer names = library.jack_get_ports(client, null, AUDIO, bits(flags));
    return ServerPort.namesAt(library, names);
  }

  private static NativeLong bits(JackPortFlags... flags) {
    long bits = 0;
    for (JackPortFlags flag : flags) {
      bits |= flag.getIntValue();
    }
    return new NativeLong(bits);
  }

  ServerPort register(String name, JackPortFlags direction) throws CaptureException {
    JackLibrary._jack_port port =
        library.jack_port_register(client, name, AUDIO, bits(direction), new NativeLong(0));
    if (port == null) {
      throw brokeOff("it made no port '" + name + "'");
    }
    return new ServerPort(library, port);
  }

  /** Lets the server run this client, with a callback for each block. To be called once. */
  void activate(BlockCallback blocks) throws CaptureException {
    callback = blocks;
    Native.setCallbackThreadInitializer(blocks, new CallbackThreadInitializer(true, false));
    library.jack_set_process_callback(client, blocks, null);
    if (library.jack_activate(client) != 0) {
      callback = null;
      throw brokeOff("it doesn't run this client");
    }
  }

  void connect(String from, String to) throws CaptureException {
    if (library.jack_connect(client, from, to) != 0) {
      throw brokeOff("it doesn't patch " + from + " to " + to);
    }
  }

  private static CaptureException brokeOff(String what) {
    return new CaptureException(
        CaptureException.Kind.GONE,
        "The audio server broke off: " + what + ".",
        "Check that the audio server still runs, and try again.");
  }

  /** Leaves the server; waits for one that is stuck. */
  @Override
  public void close() {
    if (callback != null) {
      callback.leave(this::isGone);
      settle();
    }
    library.jack_client_close(client);
  }

  /** Closing cancels the library's other thread too: let what it was just told come to its end. */
  private static void settle() {
    try {
      Thread.sleep(SETTLE_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
