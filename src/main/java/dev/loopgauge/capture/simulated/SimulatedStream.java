package dev.loopgauge.capture.simulated;

import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.LostFrames;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;

/** A stream of a programme through the rig, block by block. */
final class SimulatedStream {
  private static final int BLOCKS_A_SECOND = 10;

  /** A card that delivers too little loses one block in ten. */
  private static final int SHORT_OF = 10;

  private final List<Integer> channels;
  private final Epochs epochs;
  private final SampleRate rate;
  private final List<Sound> returns;
  private final float[][] block;

  /**
   * A stream.
   *
   * @param channels the returns that are recorded, counted from 1
   * @param seed of the programme and of all chance
   */
  SimulatedStream(
      List<Integer> channels, Epochs epochs, int cardSamples, SampleRate rate, long seed) {
    ShowProgramme programme = new ShowProgramme(rate, seed);
    this.channels = channels;
    this.epochs = epochs;
    this.rate = rate;
    this.returns =
        channels.stream()
            .map(channel -> HeardProgramme.of(channel, epochs, programme, cardSamples, rate, seed))
            .toList();
    this.block = new float[channels.size()][rate.hertz() / BLOCKS_A_SECOND];
  }

  /**
   * Gives the listener blocks until it has enough.
   *
   * @throws CaptureException when the card is gone, or waiting is interrupted
   */
  void play(BlockListener listener, Pace.Flow flow) throws CaptureException {
    int length = block[0].length;
    boolean more = true;
    for (long frame = 0; more; frame += length) {
      flow.until((double) (frame + length) / rate.hertz());
      more = give(frame, length, listener);
    }
  }

  private boolean give(long frame, int length, BlockListener listener) throws CaptureException {
    Optional<CardFault> failing = failing(frame, length);
    if (failing.equals(Optional.of(CardFault.GONE))) {
      throw CardFault.gone("%.1f s".formatted((double) frame / rate.hertz()));
    }
    if (failing.isPresent() && frame / length % SHORT_OF == SHORT_OF - 1) {
      listener.lost(new LostFrames(frame, length, "The card delivered nothing for a block."));
      return true;
    }
    for (int i = 0; i < block.length; i++) {
      narrow(returns.get(i).read(frame, length), block[i]);
    }
    return listener.block(frame, block, length);
  }

  private Optional<CardFault> failing(long frame, int length) {
    return epochs.during(frame, frame + length).stream()
        .flatMap(epoch -> epoch.wiring().failing(channels).stream())
        .findFirst();
  }

  private static void narrow(double[] sound, float[] target) {
    for (int i = 0; i < sound.length; i++) {
      target[i] = (float) sound[i];
    }
  }
}
