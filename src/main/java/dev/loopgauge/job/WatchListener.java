package dev.loopgauge.job;

import dev.loopgauge.report.watch.WatchLine;
import java.util.List;

/**
 * Learns of a watch while it goes on: a screen, a page, a server of figures, a command that is run
 * on events. It is called by one thread at a time, mostly the watch's own, which takes in no sound
 * meanwhile: what takes longer than a moment belongs on another thread.
 */
public interface WatchListener {
  /**
   * The watch begins.
   *
   * @param paths the paths, in the order of their states
   * @param announcement what is watched, where, and how often
   */
  void starts(List<String> paths, String announcement);

  /** How all paths are doing, one line each in the order of the chain file. */
  void states(List<WatchLine> states);

  /** Something starts or ends. */
  void happens(WatchLine event);

  /** Something else to know, one sentence. */
  void notes(String sentence);

  /** No more will come but the summary. */
  default void ends() {}

  /** Several at once. */
  static WatchListener toAll(List<WatchListener> listeners) {
    return new WatchListener() {
      @Override
      public void starts(List<String> paths, String announcement) {
        listeners.forEach(one -> one.starts(paths, announcement));
      }

      @Override
      public void states(List<WatchLine> states) {
        listeners.forEach(one -> one.states(states));
      }

      @Override
      public void happens(WatchLine event) {
        listeners.forEach(one -> one.happens(event));
      }

      @Override
      public void notes(String sentence) {
        listeners.forEach(one -> one.notes(sentence));
      }

      @Override
      public void ends() {
        listeners.forEach(WatchListener::ends);
      }
    };
  }

  /** One that is called by one thread after the other, by whichever. */
  static WatchListener inTurn(WatchListener listener) {
    return new WatchListener() {
      @Override
      public synchronized void starts(List<String> paths, String announcement) {
        listener.starts(paths, announcement);
      }

      @Override
      public synchronized void states(List<WatchLine> states) {
        listener.states(states);
      }

      @Override
      public synchronized void happens(WatchLine event) {
        listener.happens(event);
      }

      @Override
      public synchronized void notes(String sentence) {
        listener.notes(sentence);
      }

      @Override
      public synchronized void ends() {
        listener.ends();
      }
    };
  }
}
