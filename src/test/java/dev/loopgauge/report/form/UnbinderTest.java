package dev.loopgauge.report.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Records and maps: what is written is read again, and what others write is borne. */
class UnbinderTest {
  private enum Side {
    LEFT_OF_STAGE,
    RIGHT
  }

  private record Inner(int ret, Optional<BigDecimal> level) {
    private Inner {
      if (ret < 1) {
        throw new IllegalArgumentException("a return counts from 1, not " + ret);
      }
    }
  }

  private record Outer(
      String zebra,
      Optional<Side> side,
      Optional<Integer> apes,
      BigDecimal number,
      Optional<Inner> inner,
      List<Inner> list,
      List<BigDecimal> numbers,
      Optional<List<String>> lines,
      boolean sure)
      implements Sparse {
    @Override
    public Set<String> leftOut() {
      return Set.of("inner", "numbers");
    }
  }

  private static final Outer FULL =
      new Outer(
          "z",
          Optional.of(Side.LEFT_OF_STAGE),
          Optional.of(3),
          new BigDecimal("0.0000001"),
          Optional.of(new Inner(2, Optional.empty())),
          List.of(new Inner(1, Optional.of(new BigDecimal("-3.5")))),
          List.of(BigDecimal.ONE, new BigDecimal("2.25")),
          Optional.of(List.of("a")),
          true);

  private static final Outer EMPTY =
      new Outer(
          "z",
          Optional.empty(),
          Optional.empty(),
          BigDecimal.ZERO,
          Optional.empty(),
          List.of(),
          List.of(),
          Optional.empty(),
          false);

  private static Optional<Outer> read(String json) {
    try {
      return Unbinder.read(Outer.class, Json.read(json));
    } catch (IOException e) {
      throw new AssertionError(json, e);
    }
  }

  @Test
  void keysStandInTheOrderOfTheComponents() {
    assertEquals(
        "{\"zebra\":\"z\",\"side\":\"left-of-stage\",\"apes\":3,\"number\":0.0000001,"
            + "\"inner\":{\"return\":2,\"level\":null},\"list\":[{\"return\":1,\"level\":-3.5}],"
            + "\"numbers\":[1,2.25],\"lines\":[\"a\"],\"sure\":true}",
        Json.line(Binder.map(FULL)));
  }

  @Test
  void whatIsEmptyIsNullUnlessItIsLeftOut() {
    assertEquals(
        "{\"zebra\":\"z\",\"side\":null,\"apes\":null,\"number\":0,\"list\":[],\"lines\":null,"
            + "\"sure\":false}",
        Json.line(Binder.map(EMPTY)));
  }

  @Test
  void whatIsWrittenIsReadAgain() {
    assertEquals(Optional.of(FULL), read(Json.line(Binder.map(FULL))));
    assertEquals(Optional.of(EMPTY), read(Json.line(Binder.map(EMPTY))));
  }

  @Test
  void unknownKeysArePassedOver() {
    assertEquals(
        Optional.of(EMPTY),
        read("{\"news\":[{}],\"zebra\":\"z\",\"number\":0,\"sure\":false,\"inner\":null}"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"side\":\"above\"",
        "\"side\":1",
        "\"apes\":\"three\"",
        "\"apes\":1.5",
        "\"apes\":99999999999",
        "\"inner\":[]",
        "\"inner\":{\"return\":\"2\"}",
        "\"inner\":{\"return\":0}",
        "\"list\":{}",
        "\"list\":[7,{\"level\":1}]",
        "\"numbers\":[1,null]",
        "\"numbers\":[1,\"2\"]",
      })
  void aValueThatIsNoneCountsAsLeftOut(String wrong) {
    Optional<Outer> found = read("{\"zebra\":\"z\",\"number\":0,\"sure\":false," + wrong + "}");
    assertEquals(Optional.of(EMPTY), found);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        "{\"zebra\":1,\"number\":0,\"sure\":true}",
        "{\"zebra\":\"z\",\"number\":\"0\",\"sure\":true}",
        "{\"zebra\":\"z\",\"number\":1e999,\"sure\":true}",
        "{\"zebra\":\"z\",\"number\":1e999999999,\"sure\":true}",
        "{\"zebra\":\"z\",\"number\":1e-999999999,\"sure\":true}",
        "{\"zebra\":\"z\",\"number\":0,\"sure\":\"yes\"}",
      })
  void thereIsNoRecordWithoutWhatItNeeds(String lacking) {
    assertTrue(read(lacking).isEmpty());
  }

  @Test
  void partsThatCanBeReadStay() {
    Outer found =
        read("{\"zebra\":\"z\",\"number\":0,\"sure\":false,\"list\":[{\"return\":4},{},null]}")
            .orElseThrow();
    assertEquals(List.of(new Inner(4, Optional.empty())), found.list());
    assertFalse(found.sure());
  }

  private record Holder(String before, @Inlined Inner inner, int fresh) {}

  @Test
  void theKeysOfAnInlinedPartStandAmongTheOthers() {
    Holder holder = new Holder("b", new Inner(2, Optional.of(BigDecimal.ONE)), 3);
    assertEquals("{before=b, return=2, level=1, new=3}", Binder.map(holder).toString());
    assertEquals(Optional.of(holder), Unbinder.read(Holder.class, Binder.map(holder)));
    assertEquals(Optional.empty(), Unbinder.read(Holder.class, Map.of("before", "b", "new", 3)));
  }
}
