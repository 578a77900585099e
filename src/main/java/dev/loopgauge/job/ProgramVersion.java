package dev.loopgauge.job;

/** The version of this program, from the jar's manifest. */
public final class ProgramVersion {
  private ProgramVersion() {}

  /** Name and number, as {@code --version} prints them. */
  public static String line() {
    return "loopgauge " + number();
  }

  /** The number alone, such as {@code 0.1.0}; says so where the program isn't packaged. */
  public static String number() {
    String version = ProgramVersion.class.getPackage().getImplementationVersion();
    return version == null ? "(not packaged)" : version;
  }
}
