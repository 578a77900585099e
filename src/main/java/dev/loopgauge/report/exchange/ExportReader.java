package dev.loopgauge.report.exchange;

/** Reads the files that {@link EntryWriter} writes. */
public final class ExportReader {
  private ExportReader() {}

  /**
   * An export, CSV or JSON.
   *
   * @param text all of the file
   * @param file what errors call it
   * @throws ExchangeException when it is no export, was cut off, or any of its entries can't be one
   */
  public static EntryFile read(String text, String file) throws ExchangeException {
    return text.stripLeading().startsWith("{")
        ? JsonExport.read(text, file)
        : new CsvExport(text, file).read();
  }
}
