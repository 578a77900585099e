package dev.loopgauge.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** Arguments, one a line, of any command: understood or refused, without being run. */
record ArgumentsTarget() implements Target {
  private static final List<String> COMMANDS =
      List.of(
          "budget rig.yaml --path vocal-house --change block-size=128 --full --json",
          "plan rig.yaml --block-sizes 64,128 --sample-rates 48000,96000 --may-leave-host vocal",
          "align rig.yaml --may-delay wedge --longest-ms 3 --show Friday --when before",
          "measure --backend simulated --chain rig.yaml --path vocal --send 2 --return 2 --yes",
          "measure --stimulus sweep --seconds 1 --level -20 --repeat 3 --fault delay=48 --set a=b",
          "round rig.yaml --backend jack --sample-rate 48000 --journal --show Friday --continue",
          "soak --for 30m --profile foh --chain rig.yaml --path vocal",
          "series --live --block-sizes 64,256 --for 2m",
          "analyze --reference a.wav --reference-channel 1 --return b.wav --return-channel 2-64",
          "follow --reference a.wav --window 1 --max-delay 0.5",
          "pairs a.wav --json",
          "signal --stimulus mls --seconds 5 --sample-rate 96000",
          "host --reported-samples 371 --states active,bypassed --witness-return 3",
          "journal list --show Friday --last 20 --json",
          "journal export --format csv --show Friday",
          "journal relabel 0123 --when after",
          "report --from a.json b.json --format csv --title T --by me");

  @Override
  public List<byte[]> seeds() {
    return COMMANDS.stream()
        .map(command -> command.replace(' ', '\n').getBytes(StandardCharsets.UTF_8))
        .toList();
  }

  @Override
  public void check(byte[] input) {
    List<String> args =
        new ArrayList<>(Arrays.asList(new String(input, StandardCharsets.UTF_8).split("\n", -1)));
    // Behind "--" the one that asks for help would be a name, and the command would run; "@" names
    // a file of arguments; --debug is asked for traces.
    if (args.stream().anyMatch(arg -> arg.matches("(?s)--|@.*|--d.*"))) {
      return;
    }
    args.add("--help");
    Told.by(Map.of(), args.toArray(String[]::new));
  }
}
