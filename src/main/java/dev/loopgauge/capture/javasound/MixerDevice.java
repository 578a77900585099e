package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.alsa.AlsaFormats;
import dev.loopgauge.capture.alsa.AlsaSharing;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;

/** A mixer of Java Sound. */
final class MixerDevice implements SoundDevice {
  /** Java Sound puts ALSA's name of a device behind the card's. */
  private static final Pattern ALSA_NAME = Pattern.compile(".*\\[(.+)]");

  /** What Java Sound lists beside the devices themselves: the faders of a card. */
  private static final String FADERS = "Port ";

  private final Mixer.Info info;
  private final boolean alone;

  private MixerDevice(Mixer.Info info) {
    this.info = info;
    this.alone = isAlone(info.getName());
  }

  /**
   * All that the platform lists with a line to play to or record from, its default first; what is
   * to be had alone is taken to have one.
   */
  static List<SoundDevice> all() {
    return Arrays.stream(AudioSystem.getMixerInfo())
        .map(info -> (SoundDevice) new MixerDevice(info))
        .filter(device -> device.alone() || Arrays.stream(Direction.values()).anyMatch(device::has))
        .toList();
  }

  /** ALSA's devices tell; those of other systems mix programs. */
  private static boolean isAlone(String name) {
    return !name.startsWith(FADERS) && alsaName(name).filter(AlsaSharing::isAlone).isPresent();
  }

  private static Optional<String> alsaName(String name) {
    Matcher alsa = ALSA_NAME.matcher(name);
    return alsa.matches() ? Optional.of(alsa.group(1)) : Optional.empty();
  }

  private static Stated listed(Line.Info[] lines, Class<? extends DataLine> kind) {
    List<AudioFormat> formats =
        Arrays.stream(lines)
            .filter(info -> info instanceof DataLine.Info && info.getLineClass() == kind)
            .flatMap(info -> Arrays.stream(((DataLine.Info) info).getFormats()))
            .filter(format -> format.getEncoding().equals(AudioFormat.Encoding.PCM_SIGNED))
            .toList();
    if (formats.isEmpty()) {
      return Stated.nothing();
    }
    return Stated.of(formats);
  }

  @Override
  public String name() {
    return info.getName();
  }

  @Override
  public boolean alone() {
    return alone;
  }

  @Override
  public boolean has(Direction direction) {
    return listed(direction).most() > 0;
  }

  @Override
  public Stated stated(Direction direction) {
    Stated listed = listed(direction);
    return listed.most() > 0
        ? alsaName(name())
            .flatMap(alsa -> AlsaFormats.of(alsa, direction == Direction.SEND))
            .map(Stated::own)
            .orElse(listed)
        : listed;
  }

  private Stated listed(Direction direction) {
    return direction == Direction.SEND
        ? listed(mixer().getSourceLineInfo(), SourceDataLine.class)
        : listed(mixer().getTargetLineInfo(), TargetDataLine.class);
  }

  /** From here on Java Sound has opened the device to see what it takes, and keeps that. */
  private Mixer mixer() {
    return AudioSystem.getMixer(info);
  }

  @Override
  public Optional<PcmLine> open(Direction direction, LineFormat format) {
    try {
      return Optional.of(direction == Direction.SEND ? openPlaying(format) : openRecording(format));
    } catch (LineUnavailableException | IllegalArgumentException e) {
      return Optional.empty(); // Java Sound says "not supported" whatever the reason was.
    }
  }

  private PcmLine openPlaying(LineFormat wanted) throws LineUnavailableException {
    AudioFormat format = wanted.toAudioFormat();
    SourceDataLine line =
        (SourceDataLine) mixer().getLine(new DataLine.Info(SourceDataLine.class, format));
    line.open(format, wanted.bufferBytes());
    return DataLinePcm.playing(name(), line);
  }

  private PcmLine openRecording(LineFormat wanted) throws LineUnavailableException {
    AudioFormat format = wanted.toAudioFormat();
    TargetDataLine line =
        (TargetDataLine) mixer().getLine(new DataLine.Info(TargetDataLine.class, format));
    line.open(format, wanted.bufferBytes());
    return DataLinePcm.recording(name(), line);
  }
}
