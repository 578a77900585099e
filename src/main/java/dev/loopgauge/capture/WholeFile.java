package dev.loopgauge.capture;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;
import java.util.UUID;

/**
 * A file that is written whole or not at all. It is written under a name of its own beside the one
 * to come, forced to the disk, and then named. What is left of a killed writer has a name that
 * nobody uses again, so it blocks nothing.
 */
public final class WholeFile {
  private static final Set<OpenOption> FRESH =
      Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);

  private final Path file;
  private final FileAttribute<?>[] attributes;

  private WholeFile(Path file, FileAttribute<?>... attributes) {
    this.file = file;
    this.attributes = attributes;
  }

  /** A file with the rights that the system gives new files. */
  public static WholeFile at(Path file) {
    return new WholeFile(file);
  }

  /** A file that only the user may read and write, where the disk knows such rights. */
  public static WholeFile ownAt(Path file) {
    return isPosix(file)
        ? new WholeFile(
            file,
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")))
        : at(file);
  }

  /**
   * What a file is to hold.
   *
   * @param <E> what else than writing can fail
   */
  public interface Contents<E extends Exception> {
    /** Writes all of it; the file is closed afterwards. */
    void writeTo(OutputStream out) throws IOException, E;
  }

  /**
   * Writes a new file.
   *
   * @throws FileAlreadyExistsException when there is one of that name already; it stays as it is
   * @throws IOException when the file can't be written
   * @throws E when the contents fail; there is no file then
   */
  public <E extends Exception> void create(Contents<E> contents) throws IOException, E {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileAlreadyExistsException(file.toString());
    }
    write(contents, part -> Files.move(part, file));
  }

  /**
   * Writes a file, in the place of one that may be there.
   *
   * @throws IOException when the file can't be written; what was there is there still
   * @throws E when the contents fail; what was there is there still
   */
  public <E extends Exception> void replace(Contents<E> contents) throws IOException, E {
    write(contents, part -> Files.move(part, file, StandardCopyOption.ATOMIC_MOVE));
  }

  /** How the written file gets its name. */
  private interface Naming {
    void name(Path part) throws IOException;
  }

  private <E extends Exception> void write(Contents<E> contents, Naming naming)
      throws IOException, E {
    Path part = file.resolveSibling("." + UUID.randomUUID() + ".part");
    part.toFile().deleteOnExit(); // for an end by Ctrl-C
    try {
      try (FileChannel channel = FileChannel.open(part, FRESH, attributes);
          OutputStream out = new Forced(channel)) {
        contents.writeTo(out);
      }
      naming.name(part);
      forceFolder();
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /** Waits until the file's name is on the disk too, where folders can be asked for that. */
  private void forceFolder() throws IOException {
    if (isPosix(file)) {
      Path folder = file.toAbsolutePath().getParent();
      try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
        channel.force(true);
      }
    }
  }

  private static boolean isPosix(Path file) {
    return file.getFileSystem().supportedFileAttributeViews().contains("posix");
  }

  /** Forces what was written to the disk before it closes. */
  private static final class Forced extends FilterOutputStream {
    private final FileChannel channel;

    Forced(FileChannel channel) {
      super(Channels.newOutputStream(channel));
      this.channel = channel;
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
      out.write(bytes, from, count);
    }

    /** Contents may close it already. */
    @Override
    public void close() throws IOException {
      if (channel.isOpen()) {
        channel.force(true);
        super.close();
      }
    }
  }
}
