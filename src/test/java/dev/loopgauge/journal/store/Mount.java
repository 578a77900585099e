package dev.loopgauge.journal.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A folder as only one command sees it: on a disk of its own, or not to be written to. It needs the
 * right to mount, which root has, and others where the kernel lets them have their own name space.
 */
final class Mount {
  private static final boolean ROOT = System.getProperty("user.name").equals("root");

  private final Path folder;
  private final String mount;

  private Mount(Path folder, String mount) {
    this.folder = folder;
    this.mount = mount;
  }

  /** A disk in memory, empty at first. What the command leaves there is copied elsewhere. */
  static Mount smallDisk(Path folder, int kilobytes, Path copies) {
    return new Mount(
        folder,
        "mount -t tmpfs -o size=%dk tmpfs \"$0\" && { \"$@\"; cp \"$0\"/* %s; }"
            .formatted(kilobytes, copies));
  }

  /** The folder as it is, but nothing in it can be changed. */
  static Mount readOnly(Path folder) {
    return new Mount(
        folder, "mount --bind \"$0\" \"$0\" && mount -o remount,bind,ro \"$0\" && \"$@\"");
  }

  /** Whether this is allowed here. */
  boolean isAllowed() throws IOException, InterruptedException {
    return start(List.of("true")).waitFor() == 0;
  }

  private Process start(List<String> program) throws IOException {
    List<String> command = new ArrayList<>(List.of("unshare", ROOT ? "-m" : "-rm", "sh", "-c"));
    command.add(mount);
    command.add(folder.toString());
    command.addAll(program);
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  /** Runs a command; gives the lines that it said. */
  List<String> run(List<String> program) throws IOException {
    Process process = start(program);
    return process.inputReader(StandardCharsets.UTF_8).lines().toList();
  }
}
