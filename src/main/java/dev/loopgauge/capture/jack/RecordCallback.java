package dev.loopgauge.capture.jack;

import java.util.List;
import java.util.concurrent.atomic.AtomicReference;

/** Records for what runs. */
final class RecordCallback extends BlockCallback {
  RecordCallback(
      ServerClient client,
      List<ServerPort> ports,
      int blockSize,
      AtomicReference<Running> current,
      ServerWatch watch) {
    super(client, ports, blockSize, current, watch);
  }

  @Override
  void rest(ServerPort[] ports, int length) {
    // What comes in between takes is nobody's business.
  }

  @Override
  void move(Running running, long time, int block, ServerPort[] ports, int length) {
    running.record(time, block, ports, length);
  }
}
