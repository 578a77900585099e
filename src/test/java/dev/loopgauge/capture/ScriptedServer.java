package dev.loopgauge.capture;

import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;

/** A server that opens the sessions it was given, and remembers what it was set to. */
public final class ScriptedServer implements BlockSizeServer {
  private final ScriptedBackend backend;
  private final List<Integer> sizes = new ArrayList<>();
  private int blockSize;

  /** A server with a block size and sessions to open, in order. */
  public ScriptedServer(int blockSize, AudioSession... sessions) {
    this.blockSize = blockSize;
    AudioDevice card =
        new AudioDevice(
            "Stage card", 2, 4, List.of(new SampleRate(48_000)), RateSource.SERVER, true);
    this.backend = new ScriptedBackend("jack", new Availability.Usable(List.of(card)), sessions);
  }

  /** Every block size it was set to, in order. */
  public List<Integer> sizes() {
    return List.copyOf(sizes);
  }

  @Override
  public int blockSize() {
    return blockSize;
  }

  @Override
  public void setBlockSize(int samples) {
    sizes.add(samples);
    blockSize = samples;
  }

  @Override
  public String name() {
    return backend.name();
  }

  @Override
  public Availability look() {
    return backend.look();
  }

  @Override
  public AudioSession open(SessionRequest request) throws CaptureException {
    return backend.open(request);
  }
}
