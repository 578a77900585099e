package dev.loopgauge.capture.simulated;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.SampleRate;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * A sound card with a rig patched to it: each path of a chain file on the send and the return that
 * its patch says, all at once, and the reference straight back. It runs at any rate, the chain's
 * where none is asked for; takes are over much faster than real time. A stream hears a {@link
 * Programme}, as if others played it on each send.
 *
 * <p>The card is late by itself: its converters and some whole buffers, drawn anew for each
 * session, so that only a reference, or a calibration in the same session, takes them out.
 */
public final class SimulatedBackend implements AudioBackend {
  private static final String DEVICE = "rig";
  private static final int USUAL_BUFFER = 256;

  /** An ADC of 12 and a DAC of 11 samples: CS5361 and CS4234, their maker's data sheets. */
  private static final int CONVERTERS = 12 + 11;

  private static final int FEWEST_BUFFERS = 2;
  private static final int MOST_BUFFERS = 8;

  private final Chain chain;
  private final Plugs plugs;
  private final List<PathFault> faults;
  private final SplittableRandom random;
  private final Pace pace;

  /**
   * A card with a rig.
   *
   * @param chain the rig
   * @param plugs what of it is plugged in, and where
   * @param faults what is wrong; they act in this order
   * @param seed the same seed gives the same sessions, sample for sample
   * @param pace how fast its streams flow
   * @throws FaultFormatException when a fault names a stage that the path's loop hasn't, or a path
   *     that is not plugged in
   */
  public SimulatedBackend(Chain chain, Plugs plugs, List<PathFault> faults, long seed, Pace pace) {
    this.chain = chain;
    this.plugs = plugs;
    this.faults = List.copyOf(faults);
    this.random = new SplittableRandom(seed);
    this.pace = pace;
    epochs(chain.rate());
  }

  @Override
  public String name() {
    return "simulated";
  }

  @Override
  public Availability look() {
    return new Availability.Usable(
        List.of(new AudioDevice(DEVICE, plugs.sends(), plugs.returns(), List.of())));
  }

  @Override
  public AudioSession open(SessionRequest request) throws CaptureException {
    checkDevice(request.output());
    checkDevice(request.input());
    checkChannels("sends", request.sends(), plugs.sends());
    checkChannels("returns", request.returns(), plugs.returns());
    SampleRate rate = request.rate().orElse(chain.rate());
    int buffer = request.bufferSamples() == 0 ? USUAL_BUFFER : request.bufferSamples();
    SessionInfo info = new SessionInfo(name(), DEVICE, DEVICE, rate, buffer, false);
    SplittableRandom chance = random.split();
    int card = CONVERTERS + buffer * chance.nextInt(FEWEST_BUFFERS, MOST_BUFFERS + 1);
    return new SimulatedSession(request, info, epochs(rate), card, chance, pace);
  }

  private Epochs epochs(SampleRate rate) {
    return Epochs.of(chain, plugs, faults, rate);
  }

  private static void checkDevice(Optional<String> device) throws CaptureException {
    if (device.isPresent() && !device.get().equals(DEVICE)) {
      throw new CaptureException(
          CaptureException.Kind.NO_SUCH_DEVICE,
          "there is no device '%s' here, only '%s'".formatted(device.get(), DEVICE),
          "leave --output and --input out, or name " + DEVICE);
    }
  }

  private static void checkChannels(String what, List<Integer> channels, int most)
      throws CaptureException {
    if (!channels.isEmpty() && Collections.max(channels) > most) {
      throw new CaptureException(
          CaptureException.Kind.TOO_FEW_CHANNELS,
          "the device %s has %d %s, not %d"
              .formatted(DEVICE, most, what, Collections.max(channels)),
          "it has the channels that the chain file and the command name");
    }
  }
}
