package dev.loopgauge.capture.jack;

import com.sun.jna.Pointer;
import dev.loopgauge.capture.PortLatency;
import java.nio.FloatBuffer;
import java.util.List;
import org.jaudiolibs.jnajack.JackLatencyCallbackMode;
import org.jaudiolibs.jnajack.lowlevel.JackLibrary;

/** A port of this program on the server. */
final class ServerPort {
  private final JackLibrary library;
  private final JackLibrary._jack_port port;
  private Pointer memory = Pointer.NULL;
  private FloatBuffer block;

  ServerPort(JackLibrary library, JackLibrary._jack_port port) {
    this.library = library;
    this.port = port;
  }

  /** The full name, as other programs see it. */
  String name() {
    return library.jack_port_name(port);
  }

  /** The sound of the block at hand; to be called on the server's thread, for each block anew. */
  FloatBuffer block(int samples) {
    Pointer now = library.jack_port_get_buffer(port, samples);
    if (!now.equals(memory) || block.capacity() < samples) {
      memory = now;
      block = now.getByteBuffer(0, (long) samples * Float.BYTES).asFloatBuffer();
    }
    return block;
  }

  /** The full names of the ports that it is patched to. */
  List<String> patchedTo() {
    return namesAt(library, library.jack_port_get_connections(port));
  }

  /** What the graph reports from here on, or up to here. */
  PortLatency latency(JackLatencyCallbackMode mode) {
    var range = new JackLibrary.jack_latency_range_t();
    library.jack_port_get_latency_range(port, mode.getIntValue(), range);
    return new PortLatency(range.min, range.max);
  }

  /** Reads and frees a list of names that the library has made; null stands for none. */
  static List<String> namesAt(JackLibrary library, Pointer names) {
    if (names == null) {
      return List.of();
    }
    try {
      return List.of(names.getStringArray(0));
    } finally {
      library.jack_free(names);
    }
  }
}
