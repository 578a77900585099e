package dev.loopgauge.estimate.measurand;

import dev.loopgauge.outside.Tool;
import dev.loopgauge.signal.SampleRate;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;

/** Sounds that people played and spoke, as Debian packages hold them; ffmpeg reads them. */
final class RecordedSound {
  static final String SONGS_FOLDER = "/usr/share/games/fretsonfire/data/songs/sectoid";
  static final String WORDS_FOLDER = "/usr/share/sounds/alsa";

  /** Songs of Debian's fretsonfire-songs-sectoid, under the MIT licence; they begin softly. */
  static final RecordedSound SONGS =
      new RecordedSound(
          SONGS_FOLDER,
          20,
          "Escape from chaosland/song.ogg",
          "Feelings/song.ogg",
          "Metal madness/song.ogg",
          "War of freedom/song.ogg");

  /** Words of Debian's alsa-utils. */
  static final RecordedSound WORDS =
      new RecordedSound(
          WORDS_FOLDER, 0, "Front_Center.wav", "Front_Left.wav", "Rear_Right.wav", "Side_Left.wav");

  private static final int MOST_SECONDS = 60;

  private final String folder;
  private final int from;
  private final List<String> names;
  private final List<double[]> read = new ArrayList<>();

  private RecordedSound(String folder, int from, String... names) {
    this.folder = folder;
    this.from = from;
    this.names = List.of(names);
  }

  /** Whether the packages are installed, and ffmpeg. */
  static boolean areThere() {
    return Stream.of(SONGS, WORDS)
            .flatMap(sound -> sound.names.stream().map(name -> sound.folder + "/" + name))
            .allMatch(name -> Tool.isThere(name, System.getenv()))
        && Tool.isThere("ffmpeg", System.getenv());
  }

  /** A second of it, from anywhere in one of the files. */
  synchronized double[] second(SampleRate rate, SplittableRandom random) {
    if (read.isEmpty()) {
      names.forEach(name -> read.add(decoded(name, rate)));
    }
    double[] file = read.get(random.nextInt(read.size()));
    int at = random.nextInt(file.length - rate.hertz());
    return Arrays.copyOfRange(file, at, at + rate.hertz());
  }

  private double[] decoded(String name, SampleRate rate) {
    String[] command = {
      "ffmpeg",
      "-v",
      "error",
      "-ss",
      "" + from,
      "-t",
      "" + MOST_SECONDS,
      "-i",
      folder + "/" + name,
      "-ac",
      "1",
      "-ar",
      "" + rate.hertz(),
      "-f",
      "f64le",
      "-"
    };
    try {
      ByteBuffer bytes = ByteBuffer.wrap(Tool.run(command)).order(ByteOrder.LITTLE_ENDIAN);
      double[] samples = new double[bytes.remaining() / Double.BYTES];
      bytes.asDoubleBuffer().get(samples);
      return samples;
    } catch (IOException e) {
      throw new AssertionError(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }
}
