package dev.loopgauge.capture.jack;

import java.util.List;
import java.util.concurrent.atomic.AtomicReference;

/** Plays the current take; silence before and after it. */
final class PlayCallback extends BlockCallback {
  private final float[] silence;

  PlayCallback(
      ServerClient client,
      List<ServerPort> ports,
      int blockSize,
      AtomicReference<CallbackTake> current,
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
  void move(CallbackTake take, int frame, ServerPort[] ports, int length) {
    for (int i = 0; i < ports.length; i++) {
      take.play(i, frame, ports[i].block(length), length);
    }
    take.played().block(frame, length);
  }
}
