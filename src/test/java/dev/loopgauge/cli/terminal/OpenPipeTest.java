package dev.loopgauge.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.job.StopSign;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** A reader that goes away is no error; a full disk is one. */
class OpenPipeTest {
  private final StopSign gone = new StopSign();

  private boolean fails(String message) {
    OutputStream broken =
        new OutputStream() {
          @Override
          public void write(int octet) throws IOException {
            throw new IOException(message);
          }
        };
    PrintStream out =
        new PrintStream(new OpenPipe(broken, gone::stop), true, StandardCharsets.UTF_8);
    out.println("WITHIN");
    return out.checkError();
  }

  @Test
  void aClosedPipeIsNoError() {
    assertFalse(fails("Broken pipe"));
    assertTrue(gone.isAsked());
  }

  @Test
  void aFullDiskIsAnError() {
    assertTrue(fails("No space left on device"));
    assertFalse(gone.isAsked());
  }

  @Test
  void whatIsReadArrives() {
    ByteArrayOutputStream read = new ByteArrayOutputStream();
    PrintStream out = new PrintStream(new OpenPipe(read, gone::stop), true, StandardCharsets.UTF_8);
    out.print("früh ");
    out.write('1');
    out.flush();
    assertEquals("früh 1", read.toString(StandardCharsets.UTF_8));
  }
}
