package dev.loopgauge.dist;

import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributeView;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.Map;
import java.util.SortedMap;
import java.util.stream.Stream;

/** A zip of one folder, the same byte for byte whenever and wherever it is made. */
final class ZipFolder {
  private static final String PLAIN = "rw-r--r--";
  private static final String RUNNABLE = "rwxr-xr-x";

  private ZipFolder() {}

  /**
   * Writes it. Zip files hold local time, so run this with {@code user.timezone=UTC}.
   *
   * @param content each file by its name in the zip; what lies in {@code bin} can be run
   * @param time the time of all of them
   */
  static void write(SortedMap<String, Path> content, Instant time, Path zip) throws IOException {
    FileTime when = FileTime.from(time);
    Map<String, String> options = Map.of("create", "true", "enablePosixFileAttributes", "true");
    try (FileSystem inside = FileSystems.newFileSystem(URI.create("jar:" + zip.toUri()), options)) {
      for (Map.Entry<String, Path> entry : content.entrySet()) {
        Path file = inside.getPath("/", entry.getKey());
        Files.createDirectories(file.getParent());
        Files.write(file, Files.readAllBytes(entry.getValue()));
        Files.setPosixFilePermissions(
            file,
            PosixFilePermissions.fromString(entry.getKey().contains("/bin/") ? RUNNABLE : PLAIN));
      }
      try (Stream<Path> all = Files.walk(inside.getPath("/"))) {
        for (Path each : all.filter(path -> path.getParent() != null).toList()) {
          if (Files.isDirectory(each)) {
            Files.setPosixFilePermissions(each, PosixFilePermissions.fromString(RUNNABLE));
          }
          Files.getFileAttributeView(each, BasicFileAttributeView.class).setTimes(when, when, when);
        }
      }
    }
  }
}
