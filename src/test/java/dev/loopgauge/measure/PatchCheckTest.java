package dev.loopgauge.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.Take;
import dev.loopgauge.capture.Wires;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("campaign")
class PatchCheckTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final SessionInfo INFO = new SessionInfo("java-sound", "A", "B", RATE, 256, false);
  private static final List<Integer> SENDS = List.of(2, 1);
  private static final List<Integer> RETURNS = List.of(1, 2, 3, 4);
  private static final long SEED = 20_260_502;

  @Test
  void saysWhichReturnHearsEachSendHowLoudAndHowLate() throws CaptureException {
    PatchMap map = check(wires().join(0, 3, 1000, 0.5).join(1, 0, 300, 1));

    PatchMap.Heard rig = map.hearing(2).get(0);
    assertEquals(4, rig.ret());
    assertEquals(1000, rig.delay().samples(), 0.1);
    assertEquals(-6.02, rig.levelDb(), 0.1);
    assertEquals(List.of(1), map.hearing(1).stream().map(PatchMap.Heard::ret).toList());
    assertTrue(map.joins(new ChannelPair(2, 4)));
    assertFalse(map.joins(new ChannelPair(2, 2)));
    assertEquals(List.of(2, 3), map.silentReturns());
    assertEquals(List.of(), map.unheardSends());
  }

  @Test
  void aSendThatNobodyHearsIsNamed() throws CaptureException {
    assertEquals(List.of(2), check(wires().join(1, 0, 300, 1)).unheardSends());
  }

  @Test
  void aReturnThatHearsTwoSendsIsNamed() throws CaptureException {
    PatchMap map = check(wires().join(0, 1, 900, 1).join(1, 1, 300, 1));

    assertEquals(List.of(2), map.crossedReturns());
  }

  @Test
  void bleedIsNoPatching() throws CaptureException {
    PatchMap map = check(wires().join(0, 1, 300, 1).join(0, 2, 300, Decibels.toFactor(-45)));

    assertEquals(List.of(2), map.hearing(2).stream().map(PatchMap.Heard::ret).toList());
  }

  @Test
  void ticksAreShortQuietAndInTurn() throws CaptureException {
    ScriptedSession session = new ScriptedSession(INFO, wires());
    PatchCheck.quiet(SENDS, RETURNS, -20, 0.2).run(session);
    PatchCheck.quiet(SENDS, RETURNS, -50, 0.2).run(session);

    Take take = session.takes().get(0);
    assertEquals(-30, Decibels.ofFactor(take.sends().get(0).peak()), 0.1);
    assertEquals(-50, Decibels.ofFactor(session.takes().get(1).sends().get(0).peak()), 0.1);
    for (int i = 0; i < take.frames(); i++) {
      assertTrue(take.sends().get(0).at(i) == 0 || take.sends().get(1).at(i) == 0, "frame " + i);
    }
  }

  @Test
  void whatWasLostMeanwhileIsSaid() throws CaptureException {
    PatchMap map = check(wires().but(Incident.Kind.DROPOUT, "1 xrun"));

    assertEquals(List.of("1 xrun"), map.incidents());
  }

  private static Wires wires() {
    return new Wires(RATE, RETURNS.size(), SEED);
  }

  private static PatchMap check(Wires wires) throws CaptureException {
    return PatchCheck.quiet(SENDS, RETURNS, -20, 0.2).run(new ScriptedSession(INFO, wires));
  }
}
