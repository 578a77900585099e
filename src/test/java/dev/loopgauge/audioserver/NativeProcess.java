package dev.loopgauge.audioserver;

import com.sun.jna.Function;

/** What Java can't do to processes, done by the C library. Linux numbers. */
final class NativeProcess {
  private static final int SIGCONT = 18;
  private static final int SIGSTOP = 19;

  private NativeProcess() {}

  /** Changes an environment variable that native libraries in this process read from now on. */
  static void setEnvironment(String name, String value) {
    call("setenv", name, value, 1);
  }

  static void pause(Process process) {
    call("kill", (int) process.pid(), SIGSTOP);
  }

  static void resume(Process process) {
    call("kill", (int) process.pid(), SIGCONT);
  }

  private static void call(String function, Object... arguments) {
    int result = Function.getFunction("c", function).invokeInt(arguments);
    if (result != 0) {
      throw new IllegalStateException(function + " gave " + result + ", not 0");
    }
  }
}
