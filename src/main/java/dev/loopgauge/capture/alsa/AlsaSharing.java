package dev.loopgauge.capture.alsa;

import com.sun.jna.NativeLibrary;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.NativeLongByReference;
import com.sun.jna.ptr.PointerByReference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Whether who opens an ALSA device has it alone. Its configuration says so, and is read without
 * opening anything: a device leads through others of the types of the ALSA library 1.2 ({@code
 * doc/pcm_plugin.html}) to the hardware, which one program has alone, or to what mixes programs.
 */
public final class AlsaSharing {
  /** The types that mix programs, are an audio server's, or nobody's. */
  private static final Set<String> SHARED =
      Set.of("dmix", "dsnoop", "dshare", "jack", "pulse", "pipewire", "null");

  /** Where a device names those behind it. */
  private static final List<String> BEHIND = List.of("slave.pcm", "playback.pcm", "capture.pcm");

  /** Who opens a card's device opens its control first. */
  private static final String CONTROL = "/dev/snd/controlC";

  /** More than any configuration nests; one that names itself ends here. */
  private static final int DEEPEST = 16;

  private final NativeLibrary alsa;
  private final Pointer configuration;

  private AlsaSharing(NativeLibrary alsa, Pointer configuration) {
    this.alsa = alsa;
    this.configuration = configuration;
  }

  /**
   * Whether a device leaves itself to nobody else; of what nobody can tell, that is taken to be so.
   * One that leads nowhere takes nothing from anybody: it doesn't open.
   *
   * @param name ALSA's name of it
   */
  public static boolean isAlone(String name) {
    if (!Platform.isLinux()) {
      return false; // It is no device of ALSA.
    }
    try {
      return isAlone(NativeLibrary.getInstance("asound"), name);
    } catch (UnsatisfiedLinkError e) {
      return true; // Java Sound has a library of its own, so ALSA's may be missing.
    }
  }

  private static boolean isAlone(NativeLibrary alsa, String name) {
    PointerByReference top = new PointerByReference();
    if (call(alsa, "snd_config_update_ref", top) < 0) {
      return true;
    }
    try {
      return new AlsaSharing(alsa, top.getValue()).named(name, DEEPEST);
    } finally {
      alsa.getFunction("snd_config_unref").invokeVoid(new Object[] {top.getValue()});
    }
  }

  private boolean named(String name, int deep) {
    if (deep == 0) {
      return true;
    }
    PointerByReference definition = new PointerByReference();
    if (call(alsa, "snd_config_search_definition", configuration, "pcm", name, definition) < 0) {
      return false;
    }
    try {
      return defined(definition.getValue(), deep);
    } finally {
      call(alsa, "snd_config_delete", definition.getValue());
    }
  }

  /** What a definition says; one may also be just another name. */
  private boolean defined(Pointer node, int deep) {
    Optional<String> other = text(node);
    if (other.isPresent()) {
      return named(other.get(), deep - 1);
    }
    if (text(node, "type").filter(SHARED::contains).isPresent()) {
      return false;
    }
    List<Pointer> behind = BEHIND.stream().flatMap(place -> within(node, place).stream()).toList();
    return behind.isEmpty()
        ? isThere(node)
        : behind.stream().anyMatch(next -> defined(next, deep - 1));
  }

  /** Whether the file is there that the kernel makes of a card, or of an older driver's device. */
  private boolean isThere(Pointer node) {
    Optional<String> file =
        number(node, "card")
            .map(CONTROL::concat)
            .or(() -> text(node, "device").filter(device -> device.startsWith("/")));
    return file.filter(path -> Files.notExists(Path.of(path))).isEmpty();
  }

  /** A card's number, which may be written as text; of a name there is none. */
  private Optional<String> number(Pointer node, String place) {
    NativeLongByReference number = new NativeLongByReference();
    Optional<String> written =
        within(node, place)
            .filter(card -> call(alsa, "snd_config_get_integer", card, number) >= 0)
            .map(card -> number.getValue().toString());
    return written.or(() -> text(node, place).filter(card -> card.matches("\\d+")));
  }

  private Optional<String> text(Pointer node, String place) {
    return within(node, place).flatMap(this::text);
  }

  private Optional<Pointer> within(Pointer node, String place) {
    PointerByReference found = new PointerByReference();
    return call(alsa, "snd_config_search", node, place, found) < 0
        ? Optional.empty()
        : Optional.of(found.getValue());
  }

  private Optional<String> text(Pointer node) {
    PointerByReference text = new PointerByReference();
    return call(alsa, "snd_config_get_string", node, text) < 0
        ? Optional.empty()
        : Optional.of(text.getValue().getString(0));
  }

  private static int call(NativeLibrary alsa, String function, Object... arguments) {
    return alsa.getFunction(function).invokeInt(arguments);
  }
}
