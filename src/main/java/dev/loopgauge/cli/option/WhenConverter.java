package dev.loopgauge.cli.option;

import dev.loopgauge.journal.When;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the part of a show's day. */
public final class WhenConverter implements ITypeConverter<When> {
  @Override
  public When convert(String label) {
    return When.labelled(label)
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "expected before, during or after, found '" + label + "'"));
  }
}
