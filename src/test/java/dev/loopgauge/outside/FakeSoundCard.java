package dev.loopgauge.outside;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * A sound card that only processes with its environment see: a library that stands before their
 * calls to ALSA. Java Sound lists it, and the drivers list a device {@code alone} that is the card
 * itself, beside others that lead to it or to what mixes. Needs {@code gcc}, and Linux.
 *
 * @param environment what such a process must have in its environment
 * @param log where each device is written down that is opened
 */
public record FakeSoundCard(Map<String, String> environment, Path log) {
  private static final String CONFIGURATION =
      """
      pcm.hw { @args [ CARD DEV ] @args.CARD { type string } @args.DEV { type integer }
        type hw card "Stage" device $DEV }
      pcm.plughw { @args [ CARD DEV ] @args.CARD { type string } @args.DEV { type integer }
        type plug slave.pcm { type hw card "Stage" device $DEV } }
      pcm.alone { type plug slave.pcm "hw:0,0" hint { show on description "The card" } }
      pcm.null { type null }
      pcm.shared { type plug slave.pcm { type null } hint { show on description "Mixes" } }
      pcm.mixed { type asym
        playback.pcm { type plug slave.pcm { type dmix ipc_key 1 slave { pcm "hw:0,0" } } }
        capture.pcm { type plug slave.pcm "shared" } hint { show on description "Mixes, too" } }
      pcm.half { type asym playback.pcm "shared" capture.pcm { type plug slave.pcm "hw:0,0" }
        hint { show on description "Records from the card" } }
      pcm.itself { type plug slave.pcm "itself" hint { show on description "Never ends" } }
      pcm.nowhere { type plug slave.pcm "missing" hint { show on description "Leads nowhere" } }
      pcm.gone { type hw card 7 hint { show on description "No such card" } }
      pcm.old { type oss device "/dev/missing" hint { show on description "No such driver" } }
      """;

  /** A card whose library and log lie in a folder. */
  public static FakeSoundCard in(Path folder) throws IOException, InterruptedException {
    Path configuration = Files.writeString(folder.resolve("cards.conf"), CONFIGURATION);
    Path log = Files.createFile(folder.resolve("opened"));
    return new FakeSoundCard(
        Map.of(
            "LD_PRELOAD", PreloadedLibrary.built("fake-card", folder).toString(),
            "ALSA_CONFIG_PATH", configuration.toString(),
            "FAKE_CARD_LOG", log.toString()),
        log);
  }

  /** The devices that were opened so far, each once. */
  public List<String> opened() throws IOException {
    return Files.readAllLines(log).stream().distinct().sorted().toList();
  }
}
