package dev.loopgauge.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What no chain can be, however it was built. */
class ChainRulesTest {
  private static final Stage CONSOLE = stage("console", new Delay.Milliseconds(1));
  private static final Stage CAMERA = stage("camera", new Delay.Frames(1));
  private static final ChainPath VOCAL = path("console", Optional.empty());

  @Test
  void limitsLeftOutAreTheBuiltInOnes() {
    Chain chain = chain(VOCAL, Map.of(), Map.of());
    for (Listener listener : Listener.values()) {
      assertEquals(ListenerLimits.builtIn(listener), chain.limits().get(listener));
    }
  }

  @Test
  void namesThatAreNotDefinedAreRefused() {
    assertBroken("'consol'", () -> chain(path("consol", Optional.empty()), Map.of(), Map.of()));
    assertBroken("'cam'", () -> chain(path("console", Optional.of("cam")), Map.of(), Map.of()));
    Mix mix = new Mix("mix", List.of(new MixEntry("lead", 0, 0)));
    assertBroken("'lead'", () -> chain(VOCAL, Map.of(), Map.of("mix", mix)));
  }

  @Test
  void framesAreRefusedWithoutAPictureAndItsFrameRate() {
    Picture still = new Picture("still", Optional.empty(), Optional.empty(), List.of("camera"));
    assertBroken("'camera'", () -> chain(path("camera", Optional.empty()), Map.of(), Map.of()));
    assertBroken("'camera'", () -> chain(VOCAL, Map.of("still", still), Map.of()));
  }

  @Test
  void pathsAndPicturesNeedAStage() {
    assertBroken(
        "'empty'",
        () -> path("empty", List.of(), Optional.empty(), Optional.empty(), Optional.empty()));
    assertBroken("'empty'", () -> picture("empty", Optional.empty(), List.of()));
  }

  @Test
  void pictureStatesItsDelayOrHasStagesAndNeverBoth() {
    Optional<Delay> ms = Optional.of(new Delay.Milliseconds(40));
    assertBroken("both", () -> picture("twice", ms, List.of("camera")));
    assertBroken(
        "'no-rate'", () -> picture("no-rate", Optional.of(new Delay.Frames(1)), List.of()));
  }

  @Test
  void loopIsPartOfItsPath() {
    assertBroken(
        "'network'",
        () ->
            path(
                "vocal",
                List.of("console"),
                Optional.of(List.of("network")),
                Optional.empty(),
                Optional.empty()));
  }

  @Test
  void directSoundGoesThroughAir() {
    assertBroken(
        "'vocal'",
        () ->
            path(
                "vocal",
                List.of("console"),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Delay.Milliseconds(9))));
  }

  @Test
  void mixHasPathsAndEachOnce() {
    MixEntry vocal = new MixEntry("vocal", 0, 0);
    assertBroken("'empty'", () -> new Mix("empty", List.of()));
    assertBroken("'vocal'", () -> new Mix("double", List.of(vocal, new MixEntry("vocal", 8, -6))));
  }

  @Test
  void offsetAndLevelOfAMixAreInRange() {
    assertBroken("-1.0", () -> new MixEntry("vocal", -1, 0));
    assertBroken("1001.0", () -> new MixEntry("vocal", 1001, 0));
    assertBroken("NaN", () -> new MixEntry("vocal", 0, Double.NaN));
    assertBroken("-101.0", () -> new MixEntry("vocal", 0, -101));
  }

  static Stream<DoubleFunction<Delay>> delays() {
    return Stream.of(
        Delay.Samples::new,
        Delay.Milliseconds::new,
        Delay.Blocks::new,
        count -> new Delay.Packets(count, new PacketTime(1000)),
        Delay.Metres::new,
        Delay.Feet::new,
        Delay.Frames::new);
  }

  @ParameterizedTest
  @MethodSource("delays")
  void noDelayIsNegativeOrEndless(DoubleFunction<Delay> delay) {
    assertBroken("-1.0", () -> delay.apply(-1));
    assertBroken("NaN", () -> delay.apply(Double.NaN));
    assertBroken("Infinity", () -> delay.apply(Double.POSITIVE_INFINITY));
  }

  private static void assertBroken(String value, Executable building) {
    String message = assertThrows(IllegalArgumentException.class, building).getMessage();
    assertTrue(message.contains(value), message);
  }

  private static Chain chain(
      ChainPath path, Map<String, Picture> pictures, Map<String, Mix> mixes) {
    return new ChainBuilder("festival field", new SampleRate(48_000))
        .blockSize(64)
        .airTemperatureC(20)
        .stages(Map.of("console", CONSOLE, "camera", CAMERA))
        .paths(Map.of("vocal", path))
        .pictures(pictures)
        .mixes(mixes)
        .build();
  }

  private static ChainPath path(String stage, Optional<String> picture) {
    return path("vocal", List.of(stage), Optional.empty(), picture, Optional.empty());
  }

  private static ChainPath path(
      String name,
      List<String> stages,
      Optional<List<String>> loop,
      Optional<String> picture,
      Optional<Delay> direct) {
    return new ChainPath(
        name,
        Listener.HOUSE,
        stages,
        loop,
        picture,
        Optional.empty(),
        "lead",
        direct,
        false,
        Optional.empty(),
        Optional.empty(),
        Expectation.NONE);
  }

  private static Picture picture(String name, Optional<Delay> stated, List<String> stages) {
    return new Picture(name, Optional.empty(), stated, stages);
  }

  private static Stage stage(String name, Delay delay) {
    return new Stage(
        name,
        delay,
        new Delay.Samples(0),
        Optional.empty(),
        Optional.empty(),
        Compensation.UNKNOWN,
        Optional.empty());
  }
}
