package dev.loopgauge.audioserver;

import com.sun.jna.Callback;
import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Pointer;
import java.util.List;
import org.jaudiolibs.jnajack.lowlevel.JackLibrary;

/** States latencies to the graph, by the two functions that JNAJack leaves out. */
final class StatedLatency {
  private static final int CAPTURE = 0;

  /** Called by the server for each direction whenever the graph changes. */
  interface LatencyCallback extends Callback {
    /** States the latencies for one direction. */
    void invoke(int mode, Pointer argument);
  }

  /** The missing functions, under their native names. */
  interface Functions extends Library {
    int jack_set_latency_callback(
        JackLibrary._jack_client client, LatencyCallback callback, Pointer argument);

    void jack_port_get_latency_range(
        JackLibrary._jack_port port, int mode, JackLibrary.jack_latency_range_t range);

    void jack_port_set_latency_range(
        JackLibrary._jack_port port, int mode, JackLibrary.jack_latency_range_t range);
  }

  private final Functions functions = Native.load("jack", Functions.class);
  private final LatencyCallback callback = this::state;
  private final List<DelayChannel> channels;

  StatedLatency(List<DelayChannel> channels) {
    this.channels = channels;
  }

  void stateFor(JackLibrary._jack_client client) {
    functions.jack_set_latency_callback(client, callback, Pointer.NULL);
  }

  private void state(int mode, Pointer argument) {
    for (DelayChannel channel : channels) {
      int stated = channel.line().statedSamples().orElse(0);
      JackLibrary._jack_port from = mode == CAPTURE ? channel.input() : channel.output();
      JackLibrary._jack_port to = mode == CAPTURE ? channel.output() : channel.input();
      JackLibrary.jack_latency_range_t range = new JackLibrary.jack_latency_range_t();
      functions.jack_port_get_latency_range(from, mode, range);
      range.min += stated;
      range.max += stated;
      functions.jack_port_set_latency_range(to, mode, range);
    }
  }
}
