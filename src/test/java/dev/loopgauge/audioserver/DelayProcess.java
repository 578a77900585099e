package dev.loopgauge.audioserver;

import com.sun.jna.Callback;
import com.sun.jna.CallbackThreadInitializer;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.jaudiolibs.jnajack.lowlevel.JackLibrary;
import org.jaudiolibs.jnajack.lowlevel.JackLibraryDirect;

/**
 * The process behind a {@link DelayClient}. Arguments: the client's name, then its lines. It says
 * {@value #READY} on stdout, obeys {@value #BLOCK_SIZE} and {@value #DELAY} on stdin with {@value
 * #DONE}, and ends when stdin or the server does.
 */
public final class DelayProcess {
  static final String READY = "ready";
  static final String DONE = "done";
  static final String BLOCK_SIZE = "block-size";
  static final String DELAY = "delay";
  private static final int NO_START_SERVER_EXACT_NAME = 0x03;

  private final JackLibrary library = new JackLibraryDirect();
  private final JackLibrary._jack_client client;
  private final List<DelayChannel> channels;
  private final StatedLatency latency;
  // Native code holds on to these: they must stay reachable.
  private final JackLibrary.JackProcessCallback process = this::process;
  private final JackLibrary.JackShutdownCallback shutdown = ignored -> Runtime.getRuntime().halt(1);

  private final JackLibrary.func silence = message -> {};

  private DelayProcess(String name, List<DelayLine> lines) {
    library.jack_set_error_function(silence);
    client = library.jack_client_open(name, NO_START_SERVER_EXACT_NAME, new IntByReference());
    if (client == null) {
      throw new IllegalStateException("no server, or the name is taken: " + name);
    }
    DelayChannel[] opened = new DelayChannel[lines.size()];
    for (int i = 0; i < opened.length; i++) {
      opened[i] =
          new DelayChannel(
              lines.get(i),
              library.jack_get_sample_rate(client),
              port("in_" + (i + 1), JackLibrary.JackPortFlags.JackPortIsInput),
              port("out_" + (i + 1), JackLibrary.JackPortFlags.JackPortIsOutput));
    }
    channels = List.of(opened);
    latency = new StatedLatency(channels);
  }

  private JackLibrary._jack_port port(String name, int flag) {
    return library.jack_port_register(
        client, name, JackLibrary.JACK_DEFAULT_AUDIO_TYPE, new NativeLong(flag), new NativeLong(0));
  }

  private void run() throws IOException {
    keepThread(process);
    library.jack_on_shutdown(client, shutdown, Pointer.NULL);
    library.jack_set_process_callback(client, process, Pointer.NULL);
    if (channels.stream().anyMatch(channel -> channel.line().statedSamples().isPresent())) {
      latency.stateFor(client);
    }
    library.jack_activate(client);
    System.out.println(READY);
    BufferedReader requests =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    for (String line = requests.readLine(); line != null; line = requests.readLine()) {
      String[] words = line.split(" ", -1);
      if (words[0].equals(DELAY)) {
        channels.get(Integer.parseInt(words[1]) - 1).delayBy(Integer.parseInt(words[2]));
      } else {
        library.jack_set_buffer_size(client, Integer.parseInt(words[1]));
      }
      System.out.println(DONE);
    }
  }

  /** Keeps the server's thread attached between calls: attaching it each time is slow. */
  private static void keepThread(Callback callback) {
    Native.setCallbackThreadInitializer(callback, new CallbackThreadInitializer(true, false));
  }

  private int process(int frames) {
    for (DelayChannel channel : channels) {
      channel.process(library, frames);
    }
    return 0;
  }

  /** Runs until stdin or the server ends. */
  public static void main(String[] args) throws IOException {
    List<DelayLine> lines = Arrays.stream(args).skip(1).map(DelayLine::fromArgument).toList();
    new DelayProcess(args[0], lines).run();
    Runtime.getRuntime().halt(0);
  }
}
