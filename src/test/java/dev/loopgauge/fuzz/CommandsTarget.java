package dev.loopgauge.fuzz;

import dev.loopgauge.chain.ChainFiles;
import dev.loopgauge.cli.Recorded;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** Whole commands on a file; the first byte chooses the command. */
final class CommandsTarget implements Target {
  private static final String FILE = "FILE";

  private static final List<String> COMMANDS =
      List.of(
          "check FILE",
          "budget FILE",
          "plan FILE --block-sizes 64,128",
          "align FILE",
          "patch FILE",
          "round FILE --backend simulated --yes",
          "measure --backend simulated --yes --chain FILE --path vocal-house",
          "journal import FILE",
          "journal add FILE --show Friday --when before",
          "report --from FILE -o PAGE",
          "series FILE --sample-rate 48000",
          "analyze --reference FILE --return-channel 2",
          "follow --reference FILE --window 0.1",
          "pairs FILE");

  private final Path file;
  private final Path page;
  private final KeptEntries kept;

  CommandsTarget(Path folder) throws Exception {
    file = folder.resolve("fuzzed");
    page = folder.resolve("page.html");
    kept = KeptEntries.in(folder);
  }

  @Override
  public List<byte[]> seeds() throws Exception {
    List<byte[]> seeds = new ArrayList<>();
    byte[] theatre = ChainFiles.THEATRE.getBytes(StandardCharsets.UTF_8);
    for (int command = 0; command < 7; command++) {
      seeds.add(chosen(command, theatre));
    }
    seeds.add(chosen(7, kept.export("csv")));
    seeds.add(chosen(7, kept.export("json")));
    for (byte[] document : new DocumentTarget().seeds()) {
      seeds.add(chosen(8, document));
      seeds.add(chosen(9, document));
    }
    seeds.add(chosen(10, new SeriesTarget().seeds().get(0)));
    Path recording = Recorded.write(file, Recorded.sweep(0, 1, 1), Recorded.sweep(100, 0.5, 2));
    byte[] heard = Arrays.copyOf(Files.readAllBytes(recording), 20_000);
    for (int command = 11; command < COMMANDS.size(); command++) {
      seeds.add(chosen(command, heard));
    }
    return seeds;
  }

  private static byte[] chosen(int command, byte[] contents) {
    byte[] chosen = new byte[contents.length + 1];
    chosen[0] = (byte) command;
    System.arraycopy(contents, 0, chosen, 1, contents.length);
    return chosen;
  }

  @Override
  public void check(byte[] input) throws Exception {
    if (input.length == 0) {
      return;
    }
    Files.write(file, Arrays.copyOfRange(input, 1, input.length));
    Files.deleteIfExists(page);
    String command = COMMANDS.get(Byte.toUnsignedInt(input[0]) % COMMANDS.size());
    String[] args =
        Arrays.stream((command + " --json").split(" "))
            .map(word -> word.equals(FILE) ? file.toString() : word)
            .map(word -> word.equals("PAGE") ? page.toString() : word)
            .toArray(String[]::new);
    Told.by(
        Map.of(
            "LOOPGAUGE_JOURNAL",
            kept.journal().toString(),
            "LOOPGAUGE_DATA",
            file.resolveSibling("data").toString()),
        args);
  }
}
