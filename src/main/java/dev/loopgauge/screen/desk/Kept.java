package dev.loopgauge.screen.desk;

import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Discreet;
import dev.loopgauge.screen.state.Taken;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What the desk keeps in the journal, and what it knows from there.
 *
 * @param book the journal
 * @param known learns of it
 * @param discreet goes over what is told
 */
record Kept(ShowBook book, Knowledge known, Discreet discreet) {
  /** Keeps these readings; gives what is to be told of it. */
  Runnable keep(Map<String, Taken> waiting, Path chain, When when, String show) {
    List<String> told = new ArrayList<>();
    PagePerson listener = new PagePerson(line -> told.add(discreet.told(line)), about -> {});
    int done = 0;
    for (Map.Entry<String, Taken> one : waiting.entrySet()) {
      Taken taken = one.getValue();
      if (book.keep(one.getKey(), taken, chain, when, show, listener)) {
        known.kept(one.getKey(), taken, taken.keptAs(when));
        done++;
      }
    }
    recall();
    boolean all = done == waiting.size();
    String words =
        all
            ? "Kept %d of %d as %s in \"%s\".".formatted(done, done, when.label(), show)
            : String.join(" ", told);
    return () -> known.keeping(words, !all);
  }

  /** Reads what the journal knows; what it can't read is told, and is no reason to stop. */
  void recall() {
    try {
      known.recalled(book.past(known.paths(), known.readings(), known.show()));
    } catch (JournalException e) {
      known.keeping(discreet.told(e.getMessage()), true);
    }
  }

  /** The report of the show, as one page. */
  String report() throws JournalException {
    return book.report(known.show());
  }
}
