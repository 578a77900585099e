package dev.loopgauge.capture;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Ideal wires between the sends and the returns of a take, by their places from 0, with a little
 * noise on each return.
 */
public final class Wires implements ScriptedSession.Answer {
  private static final double NOISE = 1e-4;

  private record Wire(int send, int ret, int delaySamples, double gain) {}

  private final SampleRate rate;
  private final int returns;
  private final long seed;
  private final List<Wire> wires = new ArrayList<>();
  private final List<Incident> incidents = new ArrayList<>();

  /** No wires yet. */
  public Wires(SampleRate rate, int returns, long seed) {
    this.rate = rate;
    this.returns = returns;
    this.seed = seed;
  }

  /** Adds a wire. */
  public Wires join(int send, int ret, int delaySamples, double gain) {
    wires.add(new Wire(send, ret, delaySamples, gain));
    return this;
  }

  /** Adds an incident to each capture. */
  public Wires but(Incident.Kind kind, String text) {
    incidents.add(new Incident(kind, 0, text));
    return this;
  }

  @Override
  public Capture to(Take take) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Signal> heard = new ArrayList<>();
    for (int ret = 0; ret < returns; ret++) {
      double[] sound = new double[take.frames()];
      for (int i = 0; i < sound.length; i++) {
        sound[i] = NOISE * random.nextGaussian();
      }
      for (Wire wire : wires) {
        if (wire.ret() == ret) {
          add(take.sends().get(wire.send()), wire, sound);
        }
      }
      heard.add(Signal.of(rate, sound));
    }
    return new Capture(heard, incidents);
  }

  private static void add(Signal played, Wire wire, double[] sound) {
    for (int i = wire.delaySamples(); i < sound.length; i++) {
      int from = i - wire.delaySamples();
      sound[i] += from < played.length() ? wire.gain() * played.at(from) : 0;
    }
  }
}
