package dev.loopgauge.audioserver;

import com.sun.jna.Function;
import com.sun.jna.Memory;
import com.sun.jna.NativeLibrary;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;
import java.util.HashMap;
import java.util.Map;

/**
 * An effect by the LADSPA interface (ladspa.h, version 1.1), on one channel. Its second channel, if
 * it has one, hears nothing. The offsets are those of the descriptor on a 64-bit machine.
 */
final class LadspaEffect {
  private static final int INPUT = 1;
  private static final int CONTROL = 4;
  private static final int LARGEST_BLOCK = 8192;

  private static final int PORT_COUNT = 48;
  private static final int PORT_KINDS = 56;
  private static final int PORT_NAMES = 64;
  private static final int INSTANTIATE = 88;
  private static final int CONNECT_PORT = 96;
  private static final int ACTIVATE = 104;
  private static final int RUN = 112;

  /** Unloaded with its code once nobody holds it. */
  private final NativeLibrary code;

  private final Pointer handle;
  private final Function run;

  /** By name. The effect holds on to all of them: they must stay reachable. */
  private final Map<String, Memory> ports;

  /**
   * Starts the first effect of a library.
   *
   * @param library the library's path
   * @param controls what each control is set to, by the start of its name
   */
  LadspaEffect(String library, int rateHz, Map<String, Float> controls) {
    code = NativeLibrary.getInstance(library);
    Pointer effect =
        code.getFunction("ladspa_descriptor").invokePointer(new Object[] {new NativeLong(0)});
    handle =
        function(effect, INSTANTIATE).invokePointer(new Object[] {effect, new NativeLong(rateHz)});
    ports = connect(effect, controls);
    function(effect, ACTIVATE).invokeVoid(new Object[] {handle});
    run = function(effect, RUN);
  }

  private static Function function(Pointer effect, int offset) {
    return Function.getFunction(effect.getPointer(offset));
  }

  private Map<String, Memory> connect(Pointer effect, Map<String, Float> controls) {
    Map<String, Memory> connected = new HashMap<>();
    int count = effect.getNativeLong(PORT_COUNT).intValue();
    for (int port = 0; port < count; port++) {
      String name = effect.getPointer(PORT_NAMES).getPointer(8L * port).getString(0);
      int kind = effect.getPointer(PORT_KINDS).getInt(4L * port);
      boolean control = (kind & CONTROL) != 0;
      Memory memory = new Memory(4L * (control ? 1 : LARGEST_BLOCK));
      memory.clear();
      if (control && (kind & INPUT) != 0) {
        memory.setFloat(0, setting(name, controls));
      }
      connected.put(name, memory);
      function(effect, CONNECT_PORT)
          .invokeVoid(new Object[] {handle, new NativeLong(port), memory});
    }
    return connected;
  }

  private static float setting(String name, Map<String, Float> controls) {
    return controls.entrySet().stream()
        .filter(control -> name.startsWith(control.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("nothing set for control '" + name + "'"));
  }

  /** Puts a block through. */
  void process(float[] block, int frames) {
    ports.get("Input 1").write(0, block, 0, frames);
    run.invokeVoid(new Object[] {handle, new NativeLong(frames)});
    ports.get("Output 1").read(0, block, 0, frames);
  }

  /** The latency that the effect states, in samples, once it has run. */
  int statedSamples() {
    process(new float[64], 64);
    return Math.round(ports.get("latency").getFloat(0));
  }
}
