package dev.loopgauge.capture.jack;

import java.util.List;
import java.util.concurrent.atomic.AtomicReference;

/** Plays what runs; silence before and after it. */
final class PlayCallback extends BlockCallback {
  private final float[] silence;

  PlayCallback(
      ServerClient client,
      List<ServerPort> ports,
      int blockSize,
      AtomicReference<Running> current,
      ServerWatch watch) {
    super(client, ports, blockSize, current, watch);
    this.silence = new float[blockSize];
  }

  @Override
  void rest(ServerPort[] ports, int length) {
    for (ServerPort port : ports) {
      port.block(length).put(0, silence, 0, length);
    }
  }

  @Override
  void move(Running running, long time, int block, ServerPort[] ports, int length) {
    running.play(time, block, ports, length);
  }
}
