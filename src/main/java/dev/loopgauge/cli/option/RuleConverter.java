package dev.loopgauge.cli.option;

import dev.loopgauge.plan.PictureRule;
import java.util.Arrays;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A rule for sound against picture, by its label. */
public final class RuleConverter implements ITypeConverter<PictureRule> {
  @Override
  public PictureRule convert(String label) {
    return Arrays.stream(PictureRule.values())
        .filter(rule -> rule.label().equals(label))
        .findFirst()
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "expected one of " + labels() + ", found '" + label + "'"));
  }

  private static String labels() {
    return Arrays.stream(PictureRule.values())
        .map(PictureRule::label)
        .collect(Collectors.joining(", "));
  }
}
