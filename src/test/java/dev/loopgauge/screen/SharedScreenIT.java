package dev.loopgauge.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.loopgauge.outside.NeedsTool;
import dev.loopgauge.report.html.Browser;
import dev.loopgauge.screen.web.Sharing;
import java.io.IOException;
import java.net.ConnectException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.SocketException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** The screen by this computer's own address on a network, in a real browser, as a phone's is. */
@NeedsTool({"chromium", "chromedriver"})
@Timeout(120)
class SharedScreenIT {
  private static final String CHAIN =
      """
      chain: Rehearsal room
      sample-rate: 48000
      reference: { send: 1, return: 1 }
      stages:
        desk: { samples: 40 }
      paths:
        lead: { listener: house, stages: [desk], patch: { send: 2, return: 2 } }
      """;

  @TempDir private Path folder;

  private static String says(String id, String words) {
    return "document.getElementById('" + id + "').innerText.includes('" + words + "')";
  }

  private static void picture(Browser browser, String name) throws IOException {
    Files.createDirectories(Path.of("target"));
    Files.write(Path.of("target/screen-" + name + ".png"), browser.picture());
  }

  private static Optional<String> network() throws SocketException {
    return NetworkInterface.networkInterfaces()
        .flatMap(NetworkInterface::inetAddresses)
        .filter(one -> one instanceof Inet4Address)
        .filter(one -> !one.isLoopbackAddress() && !one.isLinkLocalAddress())
        .map(InetAddress::getHostAddress)
        .findFirst();
  }

  private Served served(Sharing sharing, SoundingRig rig, Path chain) throws Exception {
    assumeTrue(network().isPresent(), "this computer is on no network");
    return Served.of(chain, folder, "java-sound", rig.system(), sharing);
  }

  private Path chain() throws Exception {
    return Files.writeString(folder.resolve("rig.yaml"), CHAIN);
  }

  @Test
  void othersAskToMeasureAndSeeTheVerdictOnceTheComputerAgreed() throws Exception {
    Path chain = chain();
    SoundingRig rig = new SoundingRig(chain, false);
    try (Served screen = served(Sharing.CONTROL, rig, chain);
        Browser phone = Browser.start(folder.resolve("phone"));
        Browser computer = Browser.start(folder.resolve("computer"))) {
      String address = screen.server.shared().get(0);
      assertTrue(address.startsWith("http://" + network().orElseThrow() + ":"), address);
      computer.look(1440, 1000, "screen", "light");
      computer.open(screen.server.address());
      computer.await(says("sentence", "Nothing measured yet."));
      phone.look(390, 800, "screen", "dark");
      phone.open(address);
      phone.click("measure");
      phone.await(says("doing", "Somebody at the computer has to agree."));
      computer.await(says("doing", "may it play?"));
      assertEquals(0, rig.played.get());
      picture(computer, "asking");
      picture(phone, "asking-phone");
      assertEquals(List.of(), computer.accessibilityFaults());
      assertEquals(List.of("true"), phone.ask("return [!document.getElementById('agree')]"));
      computer.click("agree");
      phone.await(says("sentence", "The path is within budget and limits."));
      computer.await(says("sentence", "The path is within budget and limits."));
      String shown = "return [document.getElementById('chosen').innerText.split('Measured')[0]]";
      assertEquals(computer.ask(shown), phone.ask(shown));
    }
  }

  @Test
  void othersOnlyLookAndEndByEscapeWhatPlays() throws Exception {
    Path chain = chain();
    SoundingRig rig = new SoundingRig(chain, true);
    try (Served screen = served(Sharing.LOOK, rig, chain);
        Browser phone = Browser.start(folder.resolve("phone"))) {
      phone.open(screen.server.shared().get(0));
      phone.await(says("orders", "You can look, and stop what plays."));
      assertEquals(List.of("true"), phone.ask("return [!document.getElementById('measure')]"));
      Asker own = new Asker(screen.server.address());
      own.post("/do/measure", "{}");
      phone.await(says("doing", "Somebody at the computer has to agree."));
      own.post("/do/agree", "{}");
      rig.playing.await();
      phone.press(Keys.ESCAPE);
      phone.await(says("doing", "Stopped."));
      assertEquals(1, rig.played.get(), "takes after the stop");
    }
  }

  /** The guards stand before that address too, and the token of the one page opens no other. */
  @Test
  void theAddressOnTheNetworkIsGuardedAsTheOthersAre() throws Exception {
    Path chain = chain();
    try (Served screen = served(Sharing.LOOK, new SoundingRig(chain, false), chain)) {
      Asker other = new Asker(screen.server.shared().get(0));
      assertEquals(200, Asker.code(other.get("/")));
      assertEquals(403, Asker.code(other.token("").get("/")));
      assertEquals(403, Asker.code(other.host("attacker.example:" + other.port).get("/")));
      assertEquals(403, Asker.code(other.origin("http://attacker.example").post("/do/stop", "{}")));
      assertEquals(403, Asker.code(other.post("/do/measure", "{}")));
    }
  }

  @Test
  void nobodyOnTheNetworkReachesAScreenThatIsNotShared() throws Exception {
    Path chain = chain();
    try (Served screen = served(Sharing.NOBODY, new SoundingRig(chain, false), chain)) {
      int port = new Asker(screen.server.address()).port;
      assertThrows(
          ConnectException.class,
          () -> new Socket(InetAddress.getByName(network().orElseThrow()), port).close());
    }
  }
}
