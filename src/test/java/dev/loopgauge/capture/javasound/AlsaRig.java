package dev.loopgauge.capture.javasound;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * An audio server at 48 kHz, a rig on it, and an ALSA configuration whose only device goes through
 * the server to the rig, channel by channel.
 *
 * @param server the running server
 * @param client the running rig
 * @param channels how many channels the rig has
 * @param config the ALSA configuration; ALSA finds it by {@code ALSA_CONFIG_PATH}, and the server
 *     by the server's environment
 */
public record AlsaRig(AudioServer server, DelayClient client, int channels, Path config)
    implements AutoCloseable {
  /** The server's rate, in Hz. */
  public static final int RATE = 48_000;

  private static final String NAME = "rig";

  /** Starts all of it; the configuration goes into that folder. */
  public static AlsaRig start(
      Path folder, AudioServer.Cycles cycles, int blockSize, DelayLine... lines)
      throws IOException {
    AudioServer server = AudioServer.start(cycles, RATE, blockSize);
    try {
      DelayClient client = DelayClient.start(server, NAME, lines);
      return new AlsaRig(server, client, lines.length, configure(folder, lines.length));
    } catch (IOException e) {
      server.close();
      throw e;
    }
  }

  /** The same behind a converter that takes any rate, and at 32 kHz is wrong by 1/1024. */
  public AlsaRig hidingItsRate() throws IOException {
    String text = Files.readString(config);
    for (String way : new String[] {"sends", "returns"}) {
      text = text.replace("slave.pcm \"%s\"".formatted(way), "slave.pcm \"any_%s\"".formatted(way));
      text +=
          "pcm.any_%s { type rate slave { rate %d format S32_LE pcm { type plug slave.pcm \"%s\" } } }\n"
              .formatted(way, RATE, way);
    }
    Files.writeString(config, text);
    return this;
  }

  private static Path configure(Path folder, int channels) throws IOException {
    String text =
        """
        pcm.!default {
          type asym
          playback.pcm { type plug slave.pcm "sends" }
          capture.pcm { type plug slave.pcm "returns" }
        }
        pcm.sends { type jack playback_ports { %s } }
        pcm.returns { type jack capture_ports { %s } }
        """
            .formatted(ports("in_", channels), ports("out_", channels));
    return Files.writeString(folder.resolve("asound.conf"), text);
  }

  private static String ports(String start, int channels) {
    StringBuilder ports = new StringBuilder();
    for (int i = 0; i < channels; i++) {
      ports.append("%d \"%s:%s%d\" ".formatted(i, NAME, start, i + 1));
    }
    return ports.toString();
  }

  /** Starts takes through all its channels. */
  Takes takes(int rateHz, int buffer, int takes, int frames) throws IOException {
    return Takes.start(server.environment(), config, rateHz, channels, buffer, takes, frames);
  }

  @Override
  public void close() {
    client.close();
    server.close();
  }
}
