package dev.loopgauge.job.kept;

import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.Person;
import dev.loopgauge.journal.DamagedEntry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.report.form.Document;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** An answer from what could be read of a journal: what could not is named, and left out. */
public final class SoundPart {
  private SoundPart() {}

  /** A document with the names of what it lacks. */
  private record Partial(Document document, List<String> leftOut) implements Document {
    @Override
    public String text() {
      return document.text();
    }

    @Override
    public Map<String, Object> json() {
      Map<String, Object> json = new LinkedHashMap<>(document.json());
      json.put("damaged", leftOut);
      return json;
    }
  }

  /** The answer as it is where every entry that was asked for is whole. */
  public static Answer of(Journal journal, Answer answer, Person person) {
    return of(journal.damaged().stream().map(DamagedEntry::told).toList(), answer, person);
  }

  /**
   * The answer as it is where nothing was left out; else the person hears what, and it ends as a
   * journal that can't be read.
   *
   * @param leftOut what was, one sentence each
   */
  static Answer of(List<String> leftOut, Answer answer, Person person) {
    if (leftOut.isEmpty()) {
      return answer;
    }
    leftOut.forEach(entry -> person.say("LEFT OUT: " + entry));
    person.say("  try  `loopgauge journal check`, and import a copy into a new journal");
    return new Answer(Ending.NOT_KEPT, new Partial(answer.document(), leftOut));
  }
}
