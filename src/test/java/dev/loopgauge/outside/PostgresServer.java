package dev.loopgauge.outside;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * A PostgreSQL server of its own on a free port of this computer, with one user who must give a
 * password. Unless it has a faulty disk, it doesn't wait for the disk: what a test commits outlasts
 * the server's death, not the computer's.
 */
public final class PostgresServer implements AutoCloseable {
  static final String VERSIONS = "/usr/lib/postgresql";
  private static final String USER = "loopgauge";
  private static final String PASSWORD = "a word known to few";
  private static final long READY_SECONDS = 30;

  /** PostgreSQL refuses to run as root. */
  private static final boolean ROOT = System.getProperty("user.name").equals("root");

  private static final String OTHER_USER = "postgres";

  private final Path programs;
  private final Path folder;
  private final int port;
  private final Optional<FaultyDisk> disk;
  private Process process;
  private int databases;

  private PostgresServer(Path programs, Path folder, int port, Optional<FaultyDisk> disk) {
    this.programs = programs;
    this.folder = folder;
    this.port = port;
    this.disk = disk;
  }

  /** Makes a server's files and starts it. */
  public static PostgresServer start() throws IOException, InterruptedException {
    return start(Optional.empty());
  }

  /** The same on a disk that it waits for, and that fails or is slow. */
  public static PostgresServer startOn(FaultyDisk disk) throws IOException, InterruptedException {
    return start(Optional.of(disk));
  }

  private static PostgresServer start(Optional<FaultyDisk> disk)
      throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("postgresql");
    if (ROOT) {
      Files.setOwner(
          folder,
          folder.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName(OTHER_USER));
    }
    PostgresServer server = new PostgresServer(newestVersion(), folder, freePort(), disk);
    try {
      server.makeFiles();
      server.restart();
      return server;
    } catch (IOException | InterruptedException e) {
      server.close();
      throw e;
    }
  }

  private static Path newestVersion() throws IOException {
    try (Stream<Path> versions = Files.list(Path.of(VERSIONS))) {
      return versions
          .map(version -> version.resolve("bin"))
          .filter(programs -> Files.isExecutable(programs.resolve("postgres")))
          .max(
              Comparator.comparingInt(
                  programs -> Integer.parseInt(programs.getParent().getFileName().toString())))
          .orElseThrow(() -> new IOException("no bin/postgres in " + VERSIONS));
    }
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  private void makeFiles() throws IOException, InterruptedException {
    Path password = folder.resolve("password");
    Files.writeString(password, PASSWORD + "\n");
    run(
        command(
            "initdb",
            "--pgdata=" + data(),
            "--username=" + USER,
            "--pwfile=" + password,
            "--auth=scram-sha-256",
            "--encoding=UTF8",
            "--no-locale",
            "--no-sync"));
  }

  private Path data() {
    return folder.resolve("data");
  }

  /** A program of the server, as a user that it accepts. */
  private ProcessBuilder command(String program, String... arguments) {
    List<String> command = new ArrayList<>();
    if (ROOT) {
      command.addAll(
          List.of("setpriv", "--reuid=" + OTHER_USER, "--regid=" + OTHER_USER, "--clear-groups"));
    }
    command.add(programs.resolve(program).toString());
    command.addAll(List.of(arguments));
    return builder(command);
  }

  private ProcessBuilder builder(List<String> command) {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.redirectOutput(ProcessBuilder.Redirect.appendTo(log().toFile()));
    builder.directory(folder.toFile()).environment().putAll(environment());
    return builder;
  }

  private Path log() {
    return folder.resolve("log");
  }

  private void run(ProcessBuilder builder) throws IOException, InterruptedException {
    int code = builder.start().waitFor();
    if (code != 0) {
      throw new IOException(
          builder.command() + " ended with " + code + "\n" + Files.readString(log()));
    }
  }

  /** Starts the server again after {@link #kill}. */
  public synchronized void restart() throws IOException, InterruptedException {
    ProcessBuilder ready = client("pg_isready", "--dbname=postgres");
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(READY_SECONDS);
    do {
      if (System.nanoTime() - deadline > 0) {
        throw new IOException("PostgreSQL did not start:\n" + Files.readString(log()));
      }
      // It refuses to start as long as children of a killed one still use the files.
      if (process == null || !process.isAlive()) {
        process = server().start();
      }
      Thread.sleep(50);
    } while (ready.start().waitFor() != 0);
  }

  private ProcessBuilder server() {
    ProcessBuilder server =
        command(
            "postgres",
            "-D" + data(),
            "-p" + port,
            "-clisten_addresses=127.0.0.1",
            "-cunix_socket_directories=",
            "-cfsync=" + (disk.isPresent() ? "on" : "off"));
    disk.ifPresent(faulty -> server.environment().putAll(faulty.environment()));
    return server;
  }

  private ProcessBuilder client(String program, String... arguments) {
    List<String> command = new ArrayList<>();
    command.add(programs.resolve(program).toString());
    command.addAll(List.of("--host=127.0.0.1", "--port=" + port));
    command.addAll(List.of(arguments));
    return builder(command);
  }

  /** Makes an empty database that sorts text as people do, and gives its address. */
  public String database() throws IOException, InterruptedException {
    databases++;
    run(
        client(
            "createdb",
            "--template=template0",
            "--locale-provider=icu",
            "--icu-locale=en",
            name()));
    return "jdbc:postgresql://127.0.0.1:" + port + "/" + name();
  }

  /**
   * Waits until nobody is connected to the last database any more, or the server ended: of a client
   * that was killed it may still store what was asked for.
   */
  public void awaitNobody() throws IOException, InterruptedException {
    ProcessBuilder count =
        client(
                "psql",
                "--dbname=postgres",
                "--tuples-only",
                "--no-align",
                "--command=select 1 from pg_stat_activity where datname = '" + name() + "' limit 1")
            .redirectOutput(ProcessBuilder.Redirect.PIPE);
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(READY_SECONDS);
    while (new String(count.start().getInputStream().readAllBytes(), StandardCharsets.UTF_8)
        .startsWith("1")) {
      if (System.nanoTime() - deadline > 0) {
        throw new IOException("somebody stays connected to " + name());
      }
      Thread.sleep(20);
    }
  }

  /** The same where the server may end meanwhile, and is started again. */
  public String databaseAtLast() throws IOException, InterruptedException {
    IOException last = new IOException("never tried");
    for (int tries = 0; tries < 20; tries++) {
      try {
        return database();
      } catch (IOException e) {
        last = e;
        restart();
      }
    }
    throw last;
  }

  private String name() {
    return "journal" + databases;
  }

  /** Makes a database of what {@link #dump} wrote, and gives its address. */
  public String database(Path dump) throws IOException, InterruptedException {
    String address = database();
    run(client("psql", "--dbname=" + name(), "--set=ON_ERROR_STOP=1", "--file=" + dump));
    return address;
  }

  /** Writes all of the last database made as SQL. */
  public void dump(Path file) throws IOException, InterruptedException {
    run(client("pg_dump", "--inserts", "--no-owner", "--file=" + file, name()));
  }

  /** The user and the password, for programs that ask the environment for them. */
  public Map<String, String> environment() {
    return Map.of("PGUSER", USER, "PGPASSWORD", PASSWORD);
  }

  /** Ends the server at once, as a crash would. */
  public void kill() throws InterruptedException {
    process.destroyForcibly().waitFor();
  }

  /** Ends the server and removes its files. */
  @Override
  public void close() throws IOException {
    try {
      command("pg_ctl", "stop", "--mode=immediate", "--pgdata=" + data()).start().waitFor();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    for (Path file : files()) {
      Files.deleteIfExists(file);
    }
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.sorted(Comparator.reverseOrder()).toList();
    }
  }
}
