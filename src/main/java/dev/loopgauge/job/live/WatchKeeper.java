package dev.loopgauge.job.live;

import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.WatchListener;
import dev.loopgauge.job.kept.JournalKeeper;
import dev.loopgauge.report.watch.WatchLine;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;

/** Keeps the events of a watch in the journal, where that was asked. */
final class WatchKeeper {
  private final WatchRequest request;
  private final SessionInfo info;
  private final Map<String, String> environment;
  private final WatchListener listener;
  private boolean failed;

  WatchKeeper(
      WatchRequest request,
      SessionInfo info,
      Map<String, String> environment,
      WatchListener listener) {
    this.request = request;
    this.info = info;
    this.environment = environment;
    this.listener = listener;
  }

  /** The event, with whether it was kept. */
  WatchLine keep(WatchLine event) {
    if (!request.keep().asked()) {
      return event;
    }
    BudgetChoice budget = new BudgetChoice(Optional.of(request.chain()), event.path(), 0);
    Answer kept =
        new JournalKeeper(request.keep(), budget, environment, new Teller(listener))
            .keep(new Answer(Ending.GOOD, event), Optional.of(info), Optional.empty());
    failed |= kept.ending() != Ending.GOOD;
    return (WatchLine) kept.document();
  }

  /** Whether an event could not be kept. */
  boolean hasFailed() {
    return failed;
  }

  /** Hands on what the journal has to say, but that all went well. */
  private record Teller(WatchListener listener) implements Person {
    @Override
    public boolean present() {
      return false;
    }

    @Override
    public void say(String sentence) {
      if (!sentence.startsWith("Kept in")) {
        listener.notes(sentence);
      }
    }

    @Override
    public Optional<String> answer() throws IOException {
      return Optional.empty();
    }

    @Override
    public boolean hasAnswered() {
      return false;
    }
  }
}
