package dev.loopgauge.report.form;

/** Text for a screen of 80 columns: lines and labelled rows, wrapped between words. */
public final class Sheet {
  private static final int COLUMNS = 80;
  private static final int LABEL_COLUMNS = 11;

  private final StringBuilder text = new StringBuilder();

  /** A line from the left edge on. */
  public Sheet line(String words) {
    wrap("", words);
    return this;
  }

  /** A label and what there is to say to it. */
  public Sheet row(String label, String words) {
    String gap = " ".repeat(Math.max(0, LABEL_COLUMNS - label.length()));
    wrap("  " + label + gap + "  ", words);
    return this;
  }

  /** A line that must keep its columns. */
  public Sheet asIs(String line) {
    text.append(line).append('\n');
    return this;
  }

  /** Lines that are laid out already. */
  public Sheet block(String lines) {
    text.append(lines);
    return this;
  }

  /** An empty line, unless the last one is empty already. */
  public Sheet gap() {
    if (text.lastIndexOf("\n\n") != text.length() - 2) {
      text.append('\n');
    }
    return this;
  }

  private void wrap(String start, String words) {
    int column = start.length();
    String indent = "\n" + (start.isEmpty() ? "  " : " ".repeat(column));
    text.append(start);
    boolean first = true;
    for (String word : words.split("(?<=\\S) (?=\\S)", -1)) {
      if (!first && column + 1 + word.length() > COLUMNS) {
        text.append(indent);
        column = indent.length() - 1;
      } else if (!first) {
        text.append(' ');
        column++;
      }
      text.append(word);
      column += word.length();
      first = false;
    }
    text.append('\n');
  }

  /** All of it, each line ended by a newline. */
  @Override
  public String toString() {
    return text.toString();
  }
}
