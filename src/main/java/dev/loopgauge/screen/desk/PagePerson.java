package dev.loopgauge.screen.desk;

import dev.loopgauge.job.Person;
import dev.loopgauge.job.UsageException;
import java.io.InterruptedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;

/** Whoever sits at the computer, for one job. They are asked on the page, and only to agree. */
final class PagePerson implements Person {
  /** Who agrees later may not know any more what they agree to. (Common practice, no source.) */
  private static final int ASKED_SECONDS = 120;

  private final Consumer<String> told;
  private final Consumer<List<String>> asked;
  private final List<String> said = new ArrayList<>();
  private volatile CompletableFuture<Boolean> agreement = new CompletableFuture<>();

  /**
   * Somebody.
   *
   * @param told hears each sentence
   * @param asked gets all that they must agree to
   */
  PagePerson(Consumer<String> told, Consumer<List<String>> asked) {
    this.told = told;
    this.asked = asked;
  }

  /** They agreed, or left. */
  void answered(boolean agreed) {
    agreement.complete(agreed);
  }

  /** Whether they did not agree to what they were asked last. */
  boolean hasLeft() {
    return agreement.isDone() && !agreement.join();
  }

  @Override
  public boolean present() {
    return true;
  }

  @Override
  public boolean takesQuestions() {
    return false;
  }

  @Override
  public void say(String sentence) {
    said.add(sentence);
    told.accept(sentence);
  }

  @Override
  public boolean agrees(String task) throws InterruptedIOException {
    List<String> about = new ArrayList<>(said);
    if (!task.isBlank()) {
      about.add(task);
    }
    said.clear();
    agreement = new CompletableFuture<>();
    asked.accept(about);
    try {
      return agreement.get(ASKED_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      throw new UsageException(
          "nobody agreed within " + ASKED_SECONDS + " s; nothing was played", "measure again");
    } catch (InterruptedException e) {
      throw new InterruptedIOException("somebody stopped it");
    } catch (ExecutionException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public Optional<String> answer() {
    return Optional.empty();
  }

  @Override
  public boolean hasAnswered() {
    return false;
  }
}
