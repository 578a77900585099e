package dev.loopgauge.screen.web;

import java.io.UncheckedIOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Where this computer can be reached. */
final class Addresses {
  /** This computer alone. */
  static final String LOOPBACK = "127.0.0.1";

  private Addresses() {}

  /**
   * Its addresses on networks, by IPv4: those that people type, and that a QR code is short for.
   */
  static List<String> onNetworks() {
    List<String> addresses = new ArrayList<>();
    try {
      for (NetworkInterface one : Collections.list(NetworkInterface.getNetworkInterfaces())) {
        if (one.isUp() && !one.isLoopback()) {
          for (InetAddress address : Collections.list(one.getInetAddresses())) {
            if (address instanceof Inet4Address && !address.isLinkLocalAddress()) {
              addresses.add(address.getHostAddress());
            }
          }
        }
      }
    } catch (SocketException e) {
      throw new UncheckedIOException(e);
    }
    return addresses;
  }
}
