package dev.loopgauge.job.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.job.WatchListener;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.measured.KeptRecord;
import dev.loopgauge.report.watch.Happening;
import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.report.watch.WatchedDelay;
import dev.loopgauge.verify.watch.WatchEvent;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Events are kept beside the sound: none waits for the journal, and none is left out unsaid. */
@Timeout(60)
class WatchKeeperTest {
  private static final int WAITING = 128;

  private final LinkedBlockingQueue<WatchLine> told = new LinkedBlockingQueue<>();
  private final CountDownLatch slow = new CountDownLatch(1);

  private final class Ears implements WatchListener {
    @Override
    public void starts(List<String> paths, String announcement) {}

    @Override
    public void states(List<WatchLine> states) {}

    @Override
    public void happens(WatchLine event) {
      told.add(event);
    }

    @Override
    public void notes(String sentence) {}
  }

  private WatchLine kept(WatchLine event) {
    try {
      slow.await();
    } catch (InterruptedException e) {
      return event.withKept(KeptRecord.not("interrupted"));
    }
    return event.withKept(KeptRecord.as("1", "show.db"));
  }

  private static WatchLine event(int number) {
    return new WatchLine(
        "watch",
        Outcome.NOT_TRUSTWORTHY,
        WatchLine.Event.LOST_SOUND,
        Optional.of(WatchEvent.Phase.STARTS),
        "2026-11-29T21:14:03.000+00:00",
        BigDecimal.valueOf(number),
        Optional.of("vocal-house"),
        Optional.empty(),
        Optional.empty(),
        WatchedDelay.NONE,
        Happening.NONE,
        Optional.empty(),
        Optional.empty());
  }

  private long notKept() {
    return told.stream().filter(e -> e.kept().orElseThrow().error().isPresent()).count();
  }

  @Test
  void keepsAllInTheirOrderWithoutWaiting() {
    WatchKeeper keeper = new WatchKeeper(Optional.of(this::kept), new Ears());
    for (int i = 0; i <= WAITING; i++) {
      keeper.happens(event(i));
    }
    assertEquals(0, told.size());
    slow.countDown();
    keeper.finish(true);
    assertEquals(WAITING + 1, told.size());
    assertFalse(keeper.hasFailed());
    int next = 0;
    for (WatchLine event : told) {
      assertEquals(next++, event.atSeconds().intValue());
    }
  }

  @Test
  void tellsAtOnceWhatFindsNoRoomAndAtTheEndWhatWasNotKept() {
    WatchKeeper keeper = new WatchKeeper(Optional.of(this::kept), new Ears());
    for (int i = 0; i < WAITING + 11; i++) {
      keeper.happens(event(i));
    }
    assertEquals(10, notKept());
    keeper.finish(true);
    assertEquals(WAITING + 11, notKept());
    assertTrue(keeper.hasFailed());
  }

  @Test
  void tellsAtOnceWhereNothingIsKept() {
    WatchKeeper keeper = new WatchKeeper(Optional.empty(), new Ears());
    keeper.happens(event(1));
    assertEquals(1, told.size());
    keeper.finish(true);
    assertFalse(keeper.hasFailed());
  }
}
