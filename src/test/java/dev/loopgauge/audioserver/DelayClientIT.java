package dev.loopgauge.audioserver;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.EnumSet;
import org.jaudiolibs.jnajack.Jack;
import org.jaudiolibs.jnajack.JackClient;
import org.jaudiolibs.jnajack.JackOptions;
import org.jaudiolibs.jnajack.JackPortType;
import org.jaudiolibs.jnajack.JackStatus;
import org.junit.jupiter.api.Test;

@NeedsAudioServer
class DelayClientIT {
  @Test
  void showsItsPortsOnANewServer() throws Exception {
    try (AudioServer server = AudioServer.start(AudioServer.Cycles.STRETCH, 48_000, 1024);
        DelayClient rig = DelayClient.start(server, "rig", DelayLine.of(0), DelayLine.of(100))) {
      Jack jack = Jack.getInstance();
      JackClient client =
          jack.openClient(
              "looker",
              EnumSet.of(JackOptions.JackNoStartServer),
              EnumSet.noneOf(JackStatus.class));
      String[] ports = jack.getPorts(client, "^rig:", JackPortType.AUDIO, null);
      assertEquals("[rig:in_1, rig:out_1, rig:in_2, rig:out_2]", Arrays.toString(ports));
      rig.changeBlockSize(256);
      assertEquals(256, client.getBufferSize());
      client.close();
    }
  }
}
