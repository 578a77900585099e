package dev.loopgauge.job.planned;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Shown;
import dev.loopgauge.chain.file.ChainDraft;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.chain.file.DraftQuestion;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.report.rig.DraftDocument;
import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * Asks a few questions and writes a first chain file from the answers.
 *
 * @param target the file to write; it must not exist
 */
public record DraftJob(Path target) {
  /** So often a question is asked before it is given up. */
  private static final int MOST_TRIES = 4;

  /**
   * Asks and writes. Nothing is written before the last answer.
   *
   * @param person who answers; without a terminal, lines of standard input
   * @throws ChainFormatException when the answers make no chain
   * @throws UsageException when the file is there already or can't be written, an answer is
   *     missing, or it is wrong and nobody is there to give another
   */
  public Answer run(Person person) throws IOException, ChainFormatException {
    TextFile.requireNew(target);
    person.say("Enter takes the answer in brackets. Nothing is written before the last one.");
    Map<DraftQuestion, String> answers = new EnumMap<>(DraftQuestion.class);
    for (DraftQuestion question : DraftQuestion.values()) {
      if (question.isAsked(answers)) {
        answers.put(question, answer(question, person));
      }
    }
    String yaml = ChainDraft.yaml(answers);
    Chain chain = ChainParser.parse(yaml, target.toString());
    TextFile.writeNew(target, yaml);
    return Answer.good(DraftDocument.of(String.valueOf(target.getFileName()), chain));
  }

  private static String answer(DraftQuestion question, Person person) throws IOException {
    person.say(question.text() + " [" + question.usual() + "]");
    for (int tries = 1; ; tries++) {
      String answer = person.answer().orElseThrow(() -> left(question)).strip();
      Optional<String> wrong = answer.isEmpty() ? Optional.empty() : question.refuse(answer);
      if (wrong.isEmpty()) {
        return answer.isEmpty() ? question.usual() : answer;
      }
      if (!person.present() || tries == MOST_TRIES) {
        throw new UsageException(
            "no answer to '" + question.text() + "': " + wrong.get(),
            "nothing was written; start again");
      }
      person.say(Shown.quoted(answer) + ": " + wrong.get());
    }
  }

  private static UsageException left(DraftQuestion question) {
    return new UsageException(
        "the answers ended before '" + question.text() + "'; nothing was written",
        "answer each question with a line; an empty one takes the usual answer");
  }
}
