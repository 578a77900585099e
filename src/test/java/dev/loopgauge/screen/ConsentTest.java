package dev.loopgauge.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.screen.web.Sharing;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Sound starts only after somebody at the computer agreed, and ends at once. */
@Timeout(60)
class ConsentTest {
  private static final String CHAIN =
      """
      chain: Rehearsal room
      sample-rate: 48000
      block-size: 64
      reference: { send: 1, return: 1 }
      stages:
        desk: { samples: 40 }
        host: { blocks: 2 }
      paths:
        lead: { listener: house, stages: [desk, host], patch: { send: 2, return: 2 } }
        ears: { listener: in-ear, stages: [desk], patch: { send: 3, return: 3 } }
      """;

  @TempDir private Path folder;

  private Path chain() throws Exception {
    return Files.writeString(folder.resolve("rig.yaml"), CHAIN);
  }

  private Served served(SoundingRig rig, Path chain) throws Exception {
    return Served.of(chain, folder, "java-sound", rig.system(), Sharing.CONTROL);
  }

  private static Asker others(Served screen) {
    List<String> shared = screen.server.shared();
    return new Asker(shared.get(shared.size() - 1));
  }

  @Test
  void othersAskAndWhoSitsAtTheComputerAgrees() throws Exception {
    Path chain = chain();
    SoundingRig rig = new SoundingRig(chain, false);
    try (Served screen = served(rig, chain);
        Following page = new Following(others(screen))) {
      Asker others = others(screen);
      assertEquals(200, Asker.code(others.post("/do/measure", "{}")));
      String asked = page.until("\"step\":\"asking\"");
      assertTrue(asked.contains("-20 dBFS for 1 s, 3 times each"), asked);
      assertTrue(asked.contains("Mute the loudspeakers, take in-ears out."), asked);
      assertEquals(403, Asker.code(others.post("/do/agree", "{}")));
      assertEquals(0, rig.played.get());
      assertEquals(200, Asker.code(new Asker(screen.server.address()).post("/do/agree", "{}")));
      page.until("All 2 paths are within budget and limits.");
      assertTrue(rig.played.get() > 0);
    }
  }

  @Test
  void nothingPlaysWhereTheyDoNotAgree() throws Exception {
    Path chain = chain();
    SoundingRig rig = new SoundingRig(chain, false);
    try (Served screen = served(rig, chain);
        Following page = new Following(others(screen))) {
      Asker own = new Asker(screen.server.address());
      own.post("/do/measure", "{\"path\":\"lead\"}");
      page.until("\"step\":\"asking\"");
      own.post("/do/leave", "{}");
      page.until("\"text\":\"Not played.\"");
      own.post("/do/check", "{\"path\":\"lead\"}");
      page.until("\"step\":\"asking\"");
      others(screen).post("/do/stop", "{}");
      page.until("\"text\":\"Stopped.\"");
      assertEquals(0, rig.played.get());
    }
  }

  /** To set a host to another block size takes somebody's hand, and their word that it is done. */
  @Test
  void asksAgainBeforeItMeasuresAtAnotherBlockSize() throws Exception {
    Path chain = chain();
    String other = CHAIN.replace("block-size: 64", "block-size: 128");
    SoundingRig rig =
        new SoundingRig(Files.writeString(folder.resolve("other.yaml"), other), false);
    try (Served screen = served(rig, chain);
        Following page = new Following(others(screen))) {
      Asker own = new Asker(screen.server.address());
      own.post("/do/apart", "{\"path\":\"lead\"}");
      String asked = page.until("\"step\":\"asking\"");
      assertTrue(asked.contains("the second time with the host at another block size"), asked);
      own.post("/do/agree", "{}");
      page.until("Set the host to a block of");
      int played = rig.played.get();
      assertTrue(played > 0);
      own.post("/do/agree", "{}");
      page.until("measured again at a block of");
      assertTrue(rig.played.get() > played);
    }
  }

  @Test
  void stopEndsATakeThatPlays() throws Exception {
    Path chain = chain();
    SoundingRig rig = new SoundingRig(chain, true);
    try (Served screen = served(rig, chain);
        Following page = new Following(others(screen))) {
      Asker own = new Asker(screen.server.address());
      own.post("/do/measure", "{}");
      page.until("\"step\":\"asking\"");
      own.post("/do/agree", "{}");
      rig.playing.await();
      own.post("/do/stop", "{}");
      page.until("\"text\":\"Stopped.\"");
      assertEquals(1, rig.played.get(), "takes after the stop");
    }
  }

  @Test
  void tellsThatTheSoundIsGoneAndThatItIsBack() throws Exception {
    Path chain = chain();
    SoundingRig rig = new SoundingRig(chain, false);
    try (Served screen = served(rig, chain);
        Following page = new Following(others(screen))) {
      page.until("\"sound\":null");
      rig.goes();
      page.until("\"sound\":{\"text\":\"the card is gone\",\"hint\":\"plug it in again\"}");
    }
  }

  /** A reading of another edition of the file says so, and is not kept. */
  @Test
  void aReadingFromBeforeTheChainFileChangedIsNotFromNow() throws Exception {
    Path chain = chain();
    SoundingRig rig = new SoundingRig(chain, false);
    try (Served screen = served(rig, chain);
        Following page = new Following(others(screen))) {
      Asker own = new Asker(screen.server.address());
      own.post("/do/measure", "{\"path\":\"ears\"}");
      page.until("\"step\":\"asking\"");
      own.post("/do/agree", "{}");
      page.until("WITHIN: ears");
      Files.writeString(chain, CHAIN.replace("samples: 40", "samples: 50"));
      page.until("the chain file has changed since; measure again");
      String refused = own.post("/do/keep", "{\"when\":\"before\",\"show\":\"x\"}");
      assertTrue(refused.contains("there is no reading that isn't kept yet"), refused);
    }
  }
}
