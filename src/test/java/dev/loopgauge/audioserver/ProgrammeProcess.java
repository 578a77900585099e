package dev.loopgauge.audioserver;

import com.sun.jna.Callback;
import com.sun.jna.CallbackThreadInitializer;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import dev.loopgauge.estimate.ShowSound;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.ShortBuffer;
import java.nio.file.Path;
import java.util.SplittableRandom;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.jaudiolibs.jnajack.lowlevel.JackLibrary;
import org.jaudiolibs.jnajack.lowlevel.JackLibraryDirect;

/**
 * The process behind a {@link ProgrammeClient}. Arguments: the client's name, a seed or a WAV file,
 * then the input ports that it plays to. It ends when stdin or the server does.
 */
public final class ProgrammeProcess {
  static final String READY = "ready";
  private static final int NO_START_SERVER_EXACT_NAME = 0x03;
  private static final double SECONDS = 40;
  private static final int LARGEST_BLOCK = 8192;

  private final JackLibrary library = new JackLibraryDirect();
  private final JackLibrary._jack_client client;
  private final JackLibrary._jack_port port;
  private final float[] programme;
  private final float[] block = new float[LARGEST_BLOCK];
  // Native code holds on to these: they must stay reachable.
  private final JackLibrary.JackProcessCallback process = this::process;
  private final JackLibrary.JackShutdownCallback shutdown = ignored -> Runtime.getRuntime().halt(1);
  private int at;

  private ProgrammeProcess(String name, String what) throws IOException {
    client = library.jack_client_open(name, NO_START_SERVER_EXACT_NAME, new IntByReference());
    if (client == null) {
      throw new IllegalStateException("no server, or the name is taken: " + name);
    }
    SampleRate rate = new SampleRate(library.jack_get_sample_rate(client));
    programme =
        what.endsWith(".wav")
            ? recorded(Path.of(what))
            : programme(rate, new SplittableRandom(Long.parseLong(what)));
    port =
        library.jack_port_register(
            client,
            "out_1",
            JackLibrary.JACK_DEFAULT_AUDIO_TYPE,
            new NativeLong(JackLibrary.JackPortFlags.JackPortIsOutput),
            new NativeLong(0));
  }

  private static float[] programme(SampleRate rate, SplittableRandom random) {
    Signal speech = ShowSound.speech(rate, SECONDS / 2, random);
    Signal music = ShowSound.music(rate, SECONDS / 2, random);
    double[] both = new double[speech.length() + music.length()];
    speech.copyTo(0, both, 0, speech.length());
    music.copyTo(0, both, speech.length(), music.length());
    float[] programme = new float[both.length];
    for (int i = 0; i < both.length; i++) {
      programme[i] = (float) Math.max(-1, Math.min(1, both[i]));
    }
    return programme;
  }

  private static float[] recorded(Path wav) throws IOException {
    try (AudioInputStream in = AudioSystem.getAudioInputStream(wav.toFile())) {
      ShortBuffer samples =
          ByteBuffer.wrap(in.readAllBytes()).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer();
      float[] recorded = new float[samples.remaining()];
      for (int i = 0; i < recorded.length; i++) {
        recorded[i] = samples.get(i) / 32_768f;
      }
      return recorded;
    } catch (UnsupportedAudioFileException e) {
      throw new IOException(wav.toString(), e);
    }
  }

  private int process(int frames) {
    for (int i = 0; i < frames; i++) {
      block[i] = programme[at];
      at = (at + 1) % programme.length;
    }
    Pointer to = library.jack_port_get_buffer(port, frames);
    to.write(0, block, 0, frames);
    return 0;
  }

  private void run(String name, String[] inputs) throws IOException {
    keepThread(process);
    library.jack_on_shutdown(client, shutdown, Pointer.NULL);
    library.jack_set_process_callback(client, process, Pointer.NULL);
    library.jack_activate(client);
    for (int i = 2; i < inputs.length; i++) {
      if (library.jack_connect(client, name + ":out_1", inputs[i]) != 0) {
        throw new IllegalStateException("can't play to " + inputs[i]);
      }
    }
    System.out.println(READY);
    System.in.transferTo(OutputStream.nullOutputStream());
  }

  private static void keepThread(Callback callback) {
    Native.setCallbackThreadInitializer(callback, new CallbackThreadInitializer(true, false));
  }

  /** Plays until stdin or the server ends. */
  public static void main(String[] args) throws IOException {
    new ProgrammeProcess(args[0], args[1]).run(args[0], args);
    Runtime.getRuntime().halt(0);
  }
}
