package dev.loopgauge.cli.command;

import dev.loopgauge.audioserver.NativeProcess;
import java.io.IOException;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;

/** What can happen to a measurement while it runs. */
enum Strike {
  SERVER_KILLED {
    @Override
    void on(StruckRig rig, Process measuring, SplittableRandom random) {
      rig.killServer();
    }
  },
  SERVER_STOPPED {
    @Override
    void on(StruckRig rig, Process measuring, SplittableRandom random) throws InterruptedException {
      rig.server().pause();
      measuring.waitFor(random.nextLong(4_000), TimeUnit.MILLISECONDS);
      rig.server().resume();
    }
  },
  RIG_KILLED {
    @Override
    void on(StruckRig rig, Process measuring, SplittableRandom random) {
      rig.killClient();
    }
  },
  RIG_STOPPED {
    @Override
    void on(StruckRig rig, Process measuring, SplittableRandom random) throws InterruptedException {
      rig.client().pause();
      measuring.waitFor(random.nextLong(2_000), TimeUnit.MILLISECONDS);
      rig.client().resume();
    }
  },
  SEND_UNPLUGGED {
    @Override
    void on(StruckRig rig, Process measuring, SplittableRandom random)
        throws IOException, InterruptedException {
      rig.server().unpatch("loopgauge-play:send_2", "rig:in_2");
    }
  },
  REFERENCE_UNPLUGGED {
    @Override
    void on(StruckRig rig, Process measuring, SplittableRandom random)
        throws IOException, InterruptedException {
      rig.server().unpatch("rig:out_1", "loopgauge-record:return_1");
    }
  },
  BLOCK_SIZE_CHANGED {
    @Override
    void on(StruckRig rig, Process measuring, SplittableRandom random) throws IOException {
      rig.client().changeBlockSize(256 << random.nextInt(4));
    }
  },
  SECOND_LOOPGAUGE {
    @Override
    void on(StruckRig rig, Process measuring, SplittableRandom random) {
      // The other one is started by the trial, which reads it too.
    }
  },
  INTERRUPTED {
    @Override
    void on(StruckRig rig, Process measuring, SplittableRandom random) {
      signal(measuring, 2);
    }
  },
  TERMINATED {
    @Override
    void on(StruckRig rig, Process measuring, SplittableRandom random) {
      signal(measuring, 15);
    }
  },
  HUNG_UP {
    @Override
    void on(StruckRig rig, Process measuring, SplittableRandom random) {
      signal(measuring, 1);
    }
  };

  /** Lets it happen. */
  abstract void on(StruckRig rig, Process measuring, SplittableRandom random)
      throws IOException, InterruptedException;

  private static void signal(Process process, int number) {
    if (process.isAlive()) {
      NativeProcess.signal(process, number);
    }
  }
}
