package dev.loopgauge.capture.drivers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class DriverThreadTest {
  private final FakeDrivers drivers =
      new FakeDrivers(0).with("ASIO", FakeDrivers.device("ASIO", "Stage card", 2, 2, true));
  private final AtomicInteger loads = new AtomicInteger();
  private final DriverThread thread =
      new DriverThread(
          () -> {
            loads.incrementAndGet();
            return drivers;
          });

  @Test
  void loadsOnceAndDoesAllWorkOnOneThread() throws Exception {
    assertEquals(0, loads.get());
    Thread first = thread.call(5, all -> Thread.currentThread(), late -> {});
    Thread other =
        CompletableFuture.supplyAsync(
                () -> {
                  try {
                    return thread.call(5, all -> Thread.currentThread(), late -> {});
                  } catch (CaptureException e) {
                    throw new IllegalStateException(e);
                  }
                })
            .get(10, TimeUnit.SECONDS);
    assertEquals(first, other);
    assertTrue(first.isDaemon());
    assertEquals(1, loads.get());
  }

  @Test
  void aDriverThatHangsKeepsAllOthersOutUntilItComesBack() throws Exception {
    CountDownLatch answer = new CountDownLatch(1);
    CountDownLatch late = new CountDownLatch(1);
    drivers.hang(answer);

    var hung =
        assertThrows(
            CaptureException.class,
            () -> thread.call(1, all -> all.list("ASIO"), listing -> late.countDown()));
    assertEquals(Kind.BACKEND_UNUSABLE, hung.kind());
    assertEquals("The sound driver doesn't answer.", hung.getMessage());
    var unusable = assertInstanceOf(Availability.Unusable.class, new DriversBackend(thread).look());
    assertEquals("The sound driver doesn't answer.", unusable.reason());

    answer.countDown();
    assertTrue(late.await(10, TimeUnit.SECONDS), "what came late was lost");
    while (thread.hangs()) {
      Thread.onSpinWait();
    }
    assertInstanceOf(Availability.Usable.class, new DriversBackend(thread).look());
  }

  @Test
  void aMissingLibraryIsNamedEachTimeThoughItFailsOnlyOnceWithItsReason() {
    AtomicInteger tries = new AtomicInteger();
    DriverThread broken =
        new DriverThread(
            () -> {
              throw tries.incrementAndGet() == 1
                  ? new UnsatisfiedLinkError("Unable: libjack.so.0: cannot open shared object file")
                  : new NoClassDefFoundError("Could not initialize class");
            });
    for (int i = 0; i < 2; i++) {
      var missing =
          assertThrows(CaptureException.class, () -> broken.call(5, Drivers::names, late -> {}));
      assertEquals(Kind.BACKEND_UNUSABLE, missing.kind());
      assertEquals(
          "The drivers need libjack.so.0, which doesn't load on this computer.",
          missing.getMessage());
    }
  }

  @Test
  void aFailedCheckOfTheLibraryLeavesAllElseWorking() throws Exception {
    drivers.fail(new AssertionError("Api.cpp:1: in function X: mask != 0"));
    var failed =
        assertThrows(
            CaptureException.class, () -> thread.call(5, all -> all.list("ASIO"), late -> {}));
    assertEquals(Kind.GONE, failed.kind());
    assertTrue(failed.getMessage().contains("mask != 0"), failed::getMessage);
    assertFalse(thread.hangs());
    assertEquals(1, thread.call(5, Drivers::names, late -> {}).size());
  }
}
