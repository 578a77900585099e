package dev.loopgauge.job.live;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.jack.JackBackend;
import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.StopSign;
import dev.loopgauge.job.WatchListener;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.report.watch.WatchLine;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** A watch that runs on the audio server on a thread of its own, and all that it says. */
final class HeardWatch implements WatchListener, AutoCloseable {
  private static final int LONGEST_SECONDS = 40;

  final BlockingQueue<WatchLine> events = new LinkedBlockingQueue<>();
  final BlockingQueue<String> notes = new LinkedBlockingQueue<>();
  private final BlockingQueue<List<WatchLine>> states = new LinkedBlockingQueue<>();
  private final StopSign stop = new StopSign();
  private final ExecutorService thread = Executors.newSingleThreadExecutor();
  private final Future<Answer> answer;

  private HeardWatch(WatchRequest request) {
    Site site = new Site(Adapters.of(() -> List.of(new JackBackend())), Person.nobody(), Map.of());
    answer = thread.submit(() -> new WatchJob(request).run(site, this, stop));
  }

  /** Starts a watch over the returns of the client {@code rig}. */
  static HeardWatch of(Path chain) {
    return new HeardWatch(request(chain));
  }

  /** What it watches. */
  static WatchRequest request(Path chain) {
    return new WatchRequest(
        chain,
        Optional.empty(),
        new DeviceChoice(
            Optional.of("jack"),
            Optional.empty(),
            Optional.of("rig"),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty()),
        2,
        1,
        Optional.empty(),
        RigChoice.FLAWLESS,
        KeepChoice.NONE);
  }

  @Override
  public void starts(List<String> paths, String announcement) {
    assertTrue(announcement.contains("Plays nothing"), announcement);
  }

  @Override
  public void states(List<WatchLine> now) {
    states.add(now);
  }

  @Override
  public void happens(WatchLine event) {
    System.out.print(event.text());
    events.add(event);
  }

  @Override
  public void notes(String sentence) {
    System.out.println(sentence);
    notes.add(sentence);
  }

  /** Waits until this many more rounds were read, and gives the last. */
  List<WatchLine> await(int rounds) throws InterruptedException {
    states.clear();
    List<WatchLine> last = List.of();
    for (int i = 0; i < rounds; i++) {
      last = states.poll(LONGEST_SECONDS, TimeUnit.SECONDS);
      assertTrue(last != null, "no state came");
    }
    return last;
  }

  /** The next event. */
  WatchLine event(String what) throws InterruptedException {
    WatchLine event = events.poll(LONGEST_SECONDS, TimeUnit.SECONDS);
    assertTrue(event != null, () -> "nothing was told of " + what + " but " + states);
    return event;
  }

  /** The next note that holds some words. */
  String note(String words) throws InterruptedException {
    String note = notes.poll(LONGEST_SECONDS, TimeUnit.SECONDS);
    while (note != null && !note.contains(words)) {
      note = notes.poll(LONGEST_SECONDS, TimeUnit.SECONDS);
    }
    assertTrue(note != null, () -> "nobody said " + words);
    return note;
  }

  /** Ends it in order. */
  Answer end() throws Exception {
    stop.stop();
    Answer last = answer.get(20, TimeUnit.SECONDS);
    System.out.print(last.document().text());
    return last;
  }

  @Override
  public void close() {
    stop.stop();
    thread.shutdownNow();
  }
}
