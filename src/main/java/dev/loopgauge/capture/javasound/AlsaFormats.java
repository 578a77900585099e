package dev.loopgauge.capture.javasound;

import com.sun.jna.Memory;
import com.sun.jna.NativeLibrary;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import com.sun.jna.ptr.PointerByReference;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What ALSA says of a device without its converting layer. Java Sound opens devices through that
 * layer, which takes any rate and any number of channels: it resamples, and spreads one channel
 * over many. ALSA opens the same device without resampling and without changing channels where it
 * is asked to, and then states what the device itself does (ALSA library 1.2, {@code
 * include/pcm.h}).
 */
final class AlsaFormats {
  private static final int NONBLOCK = 0x1;
  private static final int NO_AUTO_RESAMPLE = 0x10000;
  private static final int NO_AUTO_CHANNELS = 0x20000;

  /** Java Sound puts ALSA's name of a device behind the card's. */
  private static final Pattern ALSA_NAME = Pattern.compile(".*\\[(.+)]");

  /** No converter runs at this rate: who takes it takes any, and so states nothing of its own. */
  private static final int ODD_RATE = 47_999;

  private static final List<SampleRate> RATES =
      Stream.concat(
              Stream.of(8_000, 11_025, 16_000, 22_050, 24_000, 32_000).map(SampleRate::new),
              Stated.USUAL_RATES.stream())
          .toList();

  private final NativeLibrary alsa;
  private final Pointer device;
  private final Memory parameters;

  private AlsaFormats(NativeLibrary alsa, Pointer device) {
    this.alsa = alsa;
    this.device = device;
    this.parameters = memory("snd_pcm_hw_params_sizeof");
  }

  private Memory memory(String size) {
    Memory memory = new Memory(alsa.getFunction(size).invokeLong(new Object[0]));
    memory.clear();
    return memory;
  }

  /**
   * What a device does by itself.
   *
   * @param mixer its name in Java Sound
   * @return nothing where this system has no ALSA, or the device is in use
   */
  static Optional<Stated> of(String mixer, Direction direction) {
    Matcher named = ALSA_NAME.matcher(mixer);
    if (!Platform.isLinux() || !named.matches()) {
      return Optional.empty();
    }
    try {
      return read(NativeLibrary.getInstance("asound"), named.group(1), direction);
    } catch (UnsatisfiedLinkError e) {
      return Optional.empty(); // Java Sound has a library of its own, so ALSA's may be missing.
    }
  }

  private static Optional<Stated> read(NativeLibrary alsa, String name, Direction direction) {
    PointerByReference opened = new PointerByReference();
    int way = direction == Direction.SEND ? 0 : 1;
    int mode = NONBLOCK | NO_AUTO_RESAMPLE | NO_AUTO_CHANNELS;
    if (call(alsa, "snd_pcm_open", opened, name, way, mode) < 0) {
      return Optional.empty();
    }
    try {
      return new AlsaFormats(alsa, opened.getValue()).stated();
    } finally {
      call(alsa, "snd_pcm_close", opened.getValue());
    }
  }

  private Optional<Stated> stated() {
    boolean readable =
        call(alsa, "snd_pcm_hw_params_any", device, parameters) >= 0
            && call(alsa, "snd_pcm_hw_params_set_rate_resample", device, parameters, 0) >= 0;
    if (!readable) {
      return Optional.empty();
    }
    boolean any = runsAt(ODD_RATE);
    List<SampleRate> rates =
        (any ? Stated.USUAL_RATES : RATES).stream().filter(rate -> runsAt(rate.hertz())).toList();
    RateSource source = any ? RateSource.ANY : source();
    return rates.isEmpty()
        ? Optional.empty()
        : Optional.of(Stated.own(channels("min"), channels("max"), rates, source));
  }

  /** What belongs to no card is a program's, such as an audio server. */
  private RateSource source() {
    Memory info = memory("snd_pcm_info_sizeof");
    boolean card =
        call(alsa, "snd_pcm_info", device, info) >= 0
            && call(alsa, "snd_pcm_info_get_card", info) >= 0;
    return card ? RateSource.DEVICE : RateSource.SERVER;
  }

  private boolean runsAt(int hertz) {
    return call(alsa, "snd_pcm_hw_params_test_rate", device, parameters, hertz, 0) >= 0;
  }

  private int channels(String end) {
    IntByReference channels = new IntByReference();
    call(alsa, "snd_pcm_hw_params_get_channels_" + end, parameters, channels);
    return channels.getValue();
  }

  private static int call(NativeLibrary alsa, String function, Object... arguments) {
    return alsa.getFunction(function).invokeInt(arguments);
  }
}
