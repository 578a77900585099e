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

/**
 * The journal that a watch keeps its events in.
 *
 * @param listener hears why an event could not be kept
 */
record WatchJournal(
    WatchRequest request,
    SessionInfo info,
    Map<String, String> environment,
    WatchListener listener) {
  /** The event, with whether it was kept. */
  WatchLine keep(WatchLine event) {
    BudgetChoice budget = new BudgetChoice(Optional.of(request.chain()), event.path(), 0);
    Answer kept =
        new JournalKeeper(request.keep(), budget, environment, new Teller(listener))
            .keep(new Answer(Ending.GOOD, event), Optional.of(info), Optional.empty());
    return (WatchLine) kept.document();
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
