package dev.loopgauge.job;

import java.io.IOException;
import java.util.Optional;

/**
 * Who runs a job: hears what it says, and answers what it asks. A test answers from a list; nobody
 * at all is {@link #nobody}.
 */
public interface Person {
  /** Whether somebody is there who can answer. */
  boolean present();

  /** Says something, one sentence or more. */
  void say(String sentence);

  /**
   * What the person answers, one line; blocks until they do. Empty where they left instead.
   *
   * @throws IOException when the way to them is broken
   */
  Optional<String> answer() throws IOException;

  /** Whether they have answered already, so that {@link #answer} wouldn't block. */
  boolean hasAnswered() throws IOException;

  /**
   * Whether they agree to what is about to play, as it was said. Blocks until they do.
   *
   * @param task what to do first, a sentence, or nothing
   * @return false where they left instead
   * @throws IOException when the way to them is broken
   */
  default boolean agrees(String task) throws IOException {
    say((task + " Enter to play, Ctrl-C to stop.").strip());
    return answer().isPresent();
  }

  /** Whether they can be asked more than whether they agree. */
  default boolean takesQuestions() {
    return present();
  }

  /** A job that runs by itself: nothing is heard, nothing answered. */
  static Person nobody() {
    return new Person() {
      @Override
      public boolean present() {
        return false;
      }

      @Override
      public void say(String sentence) {}

      @Override
      public Optional<String> answer() {
        return Optional.empty();
      }

      @Override
      public boolean hasAnswered() {
        return false;
      }
    };
  }
}
