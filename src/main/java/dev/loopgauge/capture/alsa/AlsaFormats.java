package dev.loopgauge.capture.alsa;

import com.sun.jna.Memory;
import com.sun.jna.NativeLibrary;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import com.sun.jna.ptr.PointerByReference;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.UsualRates;
import dev.loopgauge.signal.SampleRate;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What ALSA says of a device without its converting layer. Programs open devices through that
 * layer, which takes any rate and any number of channels: it resamples, and spreads one channel
 * over many. ALSA opens the same device without resampling and without changing channels where it
 * is asked to, and then states what the device itself does (ALSA library 1.2, {@code
 * include/pcm.h}).
 */
public final class AlsaFormats {
  private static final int PLAYBACK = 0;
  private static final int CAPTURE = 1;
  private static final int NONBLOCK = 0x1;
  private static final int NO_AUTO_RESAMPLE = 0x10000;
  private static final int NO_AUTO_CHANNELS = 0x20000;

  /** No converter runs at this rate: who takes it takes any, and so states nothing of its own. */
  private static final int ODD_RATE = 47_999;

  /** How ALSA tells of a converter: {@code Rate conversion PCM (48000, sformat=S32_LE)}. */
  private static final Pattern CONVERTER = Pattern.compile("Rate conversion PCM \\((\\d{4,6})\\b");

  private static final List<SampleRate> RATES =
      Stream.concat(
              Stream.of(8_000, 11_025, 16_000, 22_050, 24_000, 32_000).map(SampleRate::new),
              UsualRates.ALL.stream())
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
   * @param name ALSA's name of it
   * @param plays whether its sends are meant, not its returns
   * @return nothing where this system has no ALSA, or the device is in use
   */
  public static Optional<OwnFormats> of(String name, boolean plays) {
    if (!Platform.isLinux()) {
      return Optional.empty();
    }
    try {
      return read(NativeLibrary.getInstance("asound"), name, plays ? PLAYBACK : CAPTURE);
    } catch (UnsatisfiedLinkError e) {
      return Optional.empty(); // Java Sound has a library of its own, so ALSA's may be missing.
    }
  }

  private static Optional<OwnFormats> read(NativeLibrary alsa, String name, int way) {
    PointerByReference opened = new PointerByReference();
    int mode = NONBLOCK | NO_AUTO_RESAMPLE | NO_AUTO_CHANNELS;
    if (call(alsa, "snd_pcm_open", opened, name, way, mode) < 0) {
      return Optional.empty();
    }
    try {
      return new AlsaFormats(alsa, opened.getValue()).own();
    } finally {
      call(alsa, "snd_pcm_close", opened.getValue());
    }
  }

  private Optional<OwnFormats> own() {
    boolean readable =
        call(alsa, "snd_pcm_hw_params_any", device, parameters) >= 0
            && call(alsa, "snd_pcm_hw_params_set_rate_resample", device, parameters, 0) >= 0;
    if (!readable) {
      return Optional.empty();
    }
    boolean any = runsAt(ODD_RATE);
    Optional<SampleRate> behind = any ? behindConverters() : Optional.empty();
    List<SampleRate> rates =
        behind.map(List::of).orElse(any ? UsualRates.ALL : RATES).stream()
            .filter(rate -> runsAt(rate.hertz()))
            .toList();
    RateSource source = any && behind.isEmpty() ? RateSource.ANY : source();
    return rates.isEmpty()
        ? Optional.empty()
        : Optional.of(new OwnFormats(channels("min"), channels("max"), rates, source));
  }

  /**
   * The rate behind the last of the converters that the device's configuration names. ALSA takes a
   * device apart only for people to read. It was opened so that nothing else converts, so what lies
   * behind runs at that rate by itself.
   */
  private Optional<SampleRate> behindConverters() {
    PointerByReference buffer = new PointerByReference();
    if (call(alsa, "snd_output_buffer_open", buffer) < 0) {
      return Optional.empty();
    }
    Pointer output = buffer.getValue();
    try {
      call(alsa, "snd_pcm_dump", device, output);
      PointerByReference text = new PointerByReference();
      long length =
          alsa.getFunction("snd_output_buffer_string").invokeLong(new Object[] {output, text});
      byte[] read = text.getValue().getByteArray(0, (int) length);
      return CONVERTER
          .matcher(new String(read, StandardCharsets.US_ASCII))
          .results()
          .map(found -> new SampleRate(Integer.parseInt(found.group(1))))
          .reduce((before, last) -> last);
    } finally {
      call(alsa, "snd_output_close", output);
    }
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
