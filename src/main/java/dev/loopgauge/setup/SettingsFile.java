package dev.loopgauge.setup;

import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.capture.WholeFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads and writes one small YAML file. */
record SettingsFile(Path path) {
  /** Ample for any file that this program writes. */
  private static final int MOST_BYTES = 100_000;

  /** The file's settings. */
  Settings read() throws SetupException {
    LoadSettings settings = LoadSettings.builder().setLabel(path.toString()).build();
    try {
      if (Files.size(path) > MOST_BYTES) {
        throw new SetupException(path + " is too large to be a file of settings", Settings.HINT);
      }
      Node root =
          new Compose(settings)
              .composeString(Files.readString(path))
              .orElseThrow(() -> new SetupException(path + " is empty", Settings.HINT));
      return Settings.of(path.toString(), root);
    } catch (NoSuchFileException e) {
      throw new SetupException("there is no file " + path, "check the name and the folder");
    } catch (IOException e) {
      throw new SetupException(
          path + " can't be read as text: " + FileTrouble.reason(e), Settings.HINT);
    } catch (MarkedYamlEngineException e) {
      String line = e.getProblemMark().map(mark -> ":" + (mark.getLine() + 1)).orElse("");
      throw new SetupException(path + line + " isn't YAML: " + e.getProblem(), Settings.HINT);
    } catch (YamlEngineException e) {
      throw new SetupException(path + " isn't YAML: " + e.getMessage(), Settings.HINT);
    }
  }

  /** Replaces the file, whole or not at all. */
  void write(Map<String, Object> settings) throws SetupException {
    DumpSettings style = DumpSettings.builder().setDefaultFlowStyle(FlowStyle.BLOCK).build();
    try {
      Files.createDirectories(path.getParent());
      byte[] text = new Dump(style).dumpToString(settings).getBytes(StandardCharsets.UTF_8);
      WholeFile.ownAt(path).replace(out -> out.write(text));
    } catch (IOException e) {
      throw new SetupException(
          path + " can't be written: " + FileTrouble.reason(e),
          "check the folder's rights and the space on the disk");
    }
  }
}
