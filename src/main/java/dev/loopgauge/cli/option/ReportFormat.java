package dev.loopgauge.cli.option;

import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** How a report is written. */
public enum ReportFormat {
  /** A page for a browser. */
  HTML,
  /** One document for scripts. */
  JSON,
  /** A row for each measurement. */
  CSV,
  /** Lines for a terminal. */
  TEXT;

  /** Reads the name that stands on the command line. */
  public static final class Converter implements ITypeConverter<ReportFormat> {
    @Override
    public ReportFormat convert(String name) {
      for (ReportFormat format : values()) {
        if (format.name().toLowerCase(Locale.ROOT).equals(name)) {
          return format;
        }
      }
      throw new TypeConversionException("expected html, json, csv or text, found '" + name + "'");
    }
  }
}
