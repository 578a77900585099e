package dev.loopgauge.setup;

import dev.loopgauge.capture.FileTrouble;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Profiles, each in a file of its own name.
 *
 * @param folder where they are; it need not exist yet
 */
public record ProfileStore(Path folder) {
  private static final String SUFFIX = ".yaml";

  /**
   * The names of all profiles, in alphabetical order.
   *
   * @throws SetupException when the folder can't be read
   */
  public List<String> names() throws SetupException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(SUFFIX) && !name.startsWith("."))
          .map(name -> name.substring(0, name.length() - SUFFIX.length()))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new SetupException(
          folder + " can't be read: " + FileTrouble.reason(e), "check the folder's rights");
    }
  }

  /**
   * A profile.
   *
   * @throws SetupException when there is none of that name, or its file can't be used
   */
  public Profile load(String name) throws SetupException {
    Path file = file(name);
    if (!Files.exists(file)) {
      throw new SetupException("there is no profile '" + name + "' in " + folder, others());
    }
    return ProfileFormat.read(new SettingsFile(file).read());
  }

  /**
   * Keeps a new profile.
   *
   * @return its file
   * @throws SetupException when there is one of that name already, or it can't be written
   */
  public Path save(String name, Profile profile) throws SetupException {
    Path file = file(name);
    if (Files.exists(file)) {
      throw new SetupException(
          "there is a profile '" + name + "' already: " + file,
          "take another name, or `profile save --replace`");
    }
    return replace(name, profile);
  }

  /**
   * Keeps a profile in place of the one of the same name, if there is one.
   *
   * @return its file
   * @throws SetupException when it can't be written
   */
  public Path replace(String name, Profile profile) throws SetupException {
    Path file = file(name);
    new SettingsFile(file).write(ProfileFormat.write(profile));
    return file;
  }

  /**
   * Gives a profile another name.
   *
   * @return its new file
   * @throws SetupException when there is none of the old name, one of the new name already, or it
   *     can't be written
   */
  public Path rename(String name, String renamed) throws SetupException {
    Path file = save(renamed, load(name));
    delete(name);
    return file;
  }

  /**
   * Deletes a profile.
   *
   * @throws SetupException when there is none of that name, or it can't be deleted
   */
  public void delete(String name) throws SetupException {
    Path file = file(name);
    try {
      if (!Files.deleteIfExists(file)) {
        throw new SetupException("there is no profile '" + name + "' in " + folder, others());
      }
    } catch (IOException e) {
      throw new SetupException(
          file + " can't be deleted: " + FileTrouble.reason(e), "check the folder's rights");
    }
  }

  /**
   * Where a profile is or would be.
   *
   * @throws SetupException when the name can't be one
   */
  public Path file(String name) throws SetupException {
    if (!name.matches("[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]{0,63}")) {
      throw new SetupException(
          "'" + name + "' can't be a profile's name",
          "use letters, digits, '.', '-' and '_', beginning with a letter or digit");
    }
    return folder.resolve(name + SUFFIX);
  }

  private String others() throws SetupException {
    List<String> names = names();
    return names.isEmpty()
        ? "`profile save NAME ...` keeps one"
        : "there are: " + String.join(", ", names);
  }
}
