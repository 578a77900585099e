package dev.loopgauge.audioserver;

import com.sun.jna.Function;

/** What Java can't do to processes, done by the C library. Linux numbers. */
public final class NativeProcess {
  private static final int SIGCONT = 18;
  private static final int SIGSTOP = 19;

  private NativeProcess() {}

  /** Changes an environment variable that native libraries in this process read from now on. */
  static void setEnvironment(String name, String value) {
    call("setenv", name, value, 1);
  }

  static void pause(Process process) {
    signal(process, SIGSTOP);
  }

  static void resume(Process process) {
    signal(process, SIGCONT);
  }

  /** Sends a signal by its number. */
  public static void signal(Process process, int number) {
    call("kill", (int) process.pid(), number);
  }

  private static void call(String function, Object... arguments) {
    int result = Function.getFunction("c", function).invokeInt(arguments);
    if (result != 0) {
      throw new IllegalStateException(function + " gave " + result + ", not 0");
    }
  }
}
