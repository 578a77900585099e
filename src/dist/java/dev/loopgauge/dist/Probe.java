package dev.loopgauge.dist;

import java.nio.charset.Charset;
import java.security.KeyPairGenerator;

/** Run by the linked runtime: finds what no class names, and fails where it is missing. */
final class Probe {
  private Probe() {}

  /** Asks for elliptic curves, and for code pages of Windows consoles. */
  public static void main(String[] args) throws Exception {
    System.out.println(KeyPairGenerator.getInstance("EC").getProvider().getName());
    System.out.println(Charset.forName("IBM850"));
    System.out.println(Charset.forName("windows-31j"));
  }
}
