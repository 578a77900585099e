package dev.loopgauge.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProfileStoreTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final MeasurementPlan PLAN =
      new MeasurementPlan(new PlayedStimulus(StimulusKind.SWEEP, 1, -20), 3, 0.5);
  private static final Profile BARE =
      new Profile(
          "jack",
          Optional.empty(),
          Optional.empty(),
          Patching.single(2, 2),
          Optional.empty(),
          0,
          PLAN,
          Optional.empty());
  private static final Profile FULL =
      new Profile(
          "java-sound",
          Optional.of("Stage card: out \"A\" # 1"),
          Optional.of("48000"),
          new Patching(new ChannelPair(2, 4), Optional.of(new ChannelPair(1, 3))),
          Optional.of(new SampleRate(96_000)),
          256,
          new MeasurementPlan(new PlayedStimulus(StimulusKind.MLS, 0.7, -31.5), 5, 1.25),
          Optional.of(
              new Calibration(
                  "java-sound",
                  "Stage card: out \"A\" # 1",
                  "48000",
                  RATE,
                  256,
                  new ChannelPair(2, 4),
                  Optional.of(new ChannelPair(1, 3)),
                  1234.5,
                  0.03,
                  Instant.parse("2026-05-01T18:30:00Z"))));

  @TempDir Path folder;
  private ProfileStore store;

  @BeforeEach
  void open() {
    store = new DataFolder(folder).profiles();
  }

  @Test
  void givesBackWhatWasSaved() throws SetupException {
    store.save("foh", FULL);
    store.save("bare", BARE);

    assertEquals(FULL, store.load("foh"));
    assertEquals(BARE, store.load("bare"));
    assertEquals(List.of("bare", "foh"), store.names());
  }

  @Test
  void aCopiedFileIsAProfile() throws SetupException, IOException {
    Path saved = store.save("foh", FULL);
    Path laptop = folder.resolve("laptop/profiles");
    Files.createDirectories(laptop);
    Files.copy(saved, laptop.resolve("monitors.yaml"));

    assertEquals(FULL, new ProfileStore(laptop).load("monitors"));
  }

  @Test
  void keepsTheOlderOfTwoUnlessToldToReplaceIt() throws SetupException {
    store.save("foh", BARE);

    var refused = assertThrows(SetupException.class, () -> store.save("foh", FULL));
    assertTrue(refused.getMessage().startsWith("there is a profile 'foh' already"));
    assertEquals(BARE, store.load("foh"));
    store.replace("foh", FULL);
    assertEquals(FULL, store.load("foh"));
  }

  @Test
  void leavesNothingBesideTheFile() throws SetupException, IOException {
    Path file = store.save("foh", FULL);
    try (var files = Files.list(file.getParent())) {
      assertEquals(List.of(file), files.toList());
    }
  }

  @Test
  void namesTheOthersWhenThereIsNone() throws SetupException {
    store.save("foh", BARE);
    store.save("wedges", BARE);

    var missing = assertThrows(SetupException.class, () -> store.load("fho"));
    assertEquals("there are: foh, wedges", missing.hint());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "../foh", "a/b", ".hidden", "a\\b", "-x", "tab\t"})
  void refusesNamesThatAreNoFileNames(String name) {
    assertThrows(SetupException.class, () -> store.save(name, BARE));
    assertThrows(SetupException.class, () -> store.load(name));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "level: -20.0 | level: 3 | :6: 'level': expected a level in dBFS, found '3'",
        "level: -20.0 | level: loud | :6: 'level': expected a level in dBFS, found 'loud'",
        "level: -20.0 | leval: -20 | :1: 'level' is missing",
        "send: 2 | send: two | :2: 'send': expected a channel",
        "return: 2 | return: 0 | :3: 'return': expected a channel, counted from 1, found '0'",
        "return: 2 | return: [2] | :3: 'return': expected a channel, counted from 1, found a list",
        "stimulus: sweep | stimulus: chirp | :4: 'stimulus': expected click, sweep or mls",
        "repeat: 3 | buffer: -1 | :7: 'buffer': expected a number of samples, found '-1'",
        "repeat: 3 | send: 3 | :7: 'send' stands there a second time",
        "max-delay: 0.5 | max-delay: NaN | :8: 'max-delay': expected a number of seconds",
        "max-delay: 0.5 | max-delay: 0.5;colour: red | :9: there is no setting 'colour'",
        "max-delay: 0.5 | max-delay: 0.5;calibration: {} | :9: 'measured-at' is missing",
        "backend: jack | backend: { | isn't YAML",
      })
  void saysWhichLineOfABadFileIsWrong(String good, String bad, String problem)
      throws SetupException, IOException {
    Path file = store.save("foh", BARE);
    Files.writeString(file, Files.readString(file).replace(good, bad.replace(';', '\n')));

    var refused = assertThrows(SetupException.class, () -> store.load("foh"));
    assertTrue(refused.getMessage().startsWith(file.toString()), refused.getMessage());
    assertTrue(refused.getMessage().contains(problem), refused.getMessage());
    assertEquals(Settings.HINT, refused.hint());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "just a line", "- a\n- list\n", "a: *b\n", "\0", "[a, b]: c"})
  void refusesWhatIsNoSettings(String text) throws IOException {
    Files.createDirectories(store.folder());
    Files.writeString(store.folder().resolve("foh.yaml"), text);

    assertThrows(SetupException.class, () -> store.load("foh"));
  }

  @Test
  void refusesWhatIsNoTextAndWhatIsTooLong() throws IOException {
    Files.createDirectories(store.folder());
    Path file = store.folder().resolve("foh.yaml");

    Files.write(file, new byte[] {(byte) 0xff, (byte) 0xfe, 0x41});
    assertThrows(SetupException.class, () -> store.load("foh"));
    Files.write(file, new byte[200_000]);
    assertThrows(SetupException.class, () -> store.load("foh"));
  }
}
