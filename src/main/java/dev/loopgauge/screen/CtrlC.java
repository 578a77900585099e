package dev.loopgauge.screen;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Proxy;

/**
 * Ends a command that runs until Ctrl-C as if it had come to its end, where it otherwise would be
 * ended by a signal. Java has no supported way to that: by its own classes, by name, since the
 * compiler warns of them; where a virtual machine lacks them, the signal ends the program.
 */
final class CtrlC {
  private CtrlC() {}

  /** Does this when Ctrl-C is pressed, in place of ending. */
  static void then(Runnable end) {
    try {
      Class<?> signal = Class.forName("sun.misc.Signal");
      Class<?> handler = Class.forName("sun.misc.SignalHandler");
      InvocationHandler ends =
          (proxy, method, arguments) -> {
            if (method.getName().equals("handle")) {
              end.run();
              return null;
            }
            return method.getName().equals("equals")
                ? (Object) (proxy == arguments[0])
                : (Object) System.identityHashCode(proxy);
          };
      Object proxy =
          Proxy.newProxyInstance(CtrlC.class.getClassLoader(), new Class<?>[] {handler}, ends);
      signal
          .getMethod("handle", signal, handler)
          .invoke(null, signal.getConstructor(String.class).newInstance("INT"), proxy);
    } catch (ReflectiveOperationException | IllegalArgumentException e) {
      // The signal ends the program, by its own exit code.
    }
  }
}
