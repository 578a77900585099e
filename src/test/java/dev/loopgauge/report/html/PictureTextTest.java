package dev.loopgauge.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class PictureTextTest {
  private static byte[] png() throws IOException {
    BufferedImage image = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
    image.setRGB(7, 9, 0x12ab34);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "png", out);
    return out.toByteArray();
  }

  @Test
  void aPictureBearsItsTextAndIsThePictureStill() throws IOException {
    assertEquals(Optional.empty(), PictureText.of(png()));
    byte[] told = PictureText.added("LATE by 2.67 ms (± 0.01)\n  next", png());
    assertEquals(Optional.of("LATE by 2.67 ms (± 0.01)\n  next"), PictureText.of(told));
    BufferedImage read = ImageIO.read(new ByteArrayInputStream(told));
    assertEquals(40, read.getWidth());
    assertEquals(0xff12ab34, read.getRGB(7, 9));
  }
}
