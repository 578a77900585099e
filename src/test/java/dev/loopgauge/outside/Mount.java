package dev.loopgauge.outside;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A folder as only one command sees it: on a disk of its own, or not to be written to. It needs the
 * right to mount, which root has, and others where the kernel lets them have their own name space.
 */
public final class Mount {
  private static final boolean ROOT = System.getProperty("user.name").equals("root");

  private final Path folder;
  private final String mount;

  private Mount(Path folder, String mount) {
    this.folder = folder;
    this.mount = mount;
  }

  /** A disk in memory, empty at first. What the command leaves there is copied elsewhere. */
  public static Mount smallDisk(Path folder, int kilobytes, Path copies) {
    return new Mount(
        folder,
        "mount -t tmpfs -o size=%dk tmpfs \"$0\" && { \"$@\"; code=$?; cp -r \"$0\"/. %s; exit $code; }"
            .formatted(kilobytes, copies));
  }

  /** An empty folder that nothing can be run from. */
  public static Mount withoutExecution(Path folder) {
    return new Mount(folder, "mount -t tmpfs -o noexec tmpfs \"$0\" && \"$@\"");
  }

  /** The folder as it is, but nothing in it can be changed. */
  public static Mount readOnly(Path folder) {
    return new Mount(
        folder, "mount --bind \"$0\" \"$0\" && mount -o remount,bind,ro \"$0\" && \"$@\"");
  }

  /** Whether this is allowed here. */
  public boolean isAllowed() throws IOException, InterruptedException {
    return new ProcessBuilder(around(List.of("true"))).inheritIO().start().waitFor() == 0;
  }

  /** The command that runs another one so. */
  public List<String> around(List<String> command) {
    List<String> all = new ArrayList<>(List.of("unshare", ROOT ? "-m" : "-rm", "sh", "-c"));
    all.add(mount);
    all.add(folder.toString());
    all.addAll(command);
    return all;
  }
}
