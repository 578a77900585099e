package dev.loopgauge.audioserver;

import com.sun.jna.Pointer;
import java.util.Optional;
import org.jaudiolibs.jnajack.lowlevel.JackLibrary;

/** One line at work between two ports. */
final class DelayChannel {
  private static final int LARGEST_BLOCK = 8192;

  /** By how much a line may be made later while it runs, in samples. */
  private static final int MOST_MORE = 8192;

  private final DelayLine line;
  private final JackLibrary._jack_port input;
  private final JackLibrary._jack_port output;
  private final float[] block = new float[LARGEST_BLOCK];
  private final float[] held;
  private volatile int samples;
  private final Optional<LadspaEffect> limiter;
  private int newest;

  DelayChannel(
      DelayLine line, int rateHz, JackLibrary._jack_port input, JackLibrary._jack_port output) {
    this.line = line;
    this.limiter = line.startLimiter(rateHz);
    this.input = input;
    this.output = output;
    this.held = new float[line.samples() + MOST_MORE];
    this.samples = line.samples();
  }

  DelayLine line() {
    return line;
  }

  JackLibrary._jack_port input() {
    return input;
  }

  JackLibrary._jack_port output() {
    return output;
  }

  void process(JackLibrary library, int frames) {
    Pointer from = library.jack_port_get_buffer(input, frames);
    Pointer to = library.jack_port_get_buffer(output, frames);
    from.read(0, block, 0, frames);
    limiter.ifPresent(effect -> effect.process(block, frames));
    for (int i = 0; i < frames; i++) {
      block[i] = (float) line.gain() * later(block[i]);
    }
    to.write(0, block, 0, frames);
  }

  /** Makes the line another delay, from the next block on. */
  void delayBy(int newSamples) {
    samples = Math.min(newSamples, held.length - 1);
  }

  private float later(float sample) {
    newest = (newest + 1) % held.length;
    held[newest] = sample;
    return held[(newest + held.length - samples) % held.length];
  }
}
