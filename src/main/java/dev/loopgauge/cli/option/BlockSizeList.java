package dev.loopgauge.cli.option;

import java.util.Arrays;
import java.util.List;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Block sizes in the order in which they are wanted.
 *
 * @param sizes two or more, each once
 */
public record BlockSizeList(List<Integer> sizes) {
  /** No host computes more at a time. */
  private static final int LARGEST = 65_536;

  /** Copies the sizes. */
  public BlockSizeList {
    sizes = List.copyOf(sizes);
  }

  /** Reads lists such as {@code 64,128,256}. */
  public static final class Converter implements ITypeConverter<BlockSizeList> {
    @Override
    public BlockSizeList convert(String text) {
      String[] parts = text.split(",", -1);
      if (!Arrays.stream(parts).allMatch(part -> part.strip().matches("[0-9]{1,5}"))) {
        throw expected(text);
      }
      List<Integer> sizes =
          Arrays.stream(parts).map(part -> Integer.valueOf(part.strip())).toList();
      boolean usable = sizes.stream().allMatch(size -> size >= 1 && size <= LARGEST);
      if (!usable || sizes.size() < 2 || sizes.stream().distinct().count() != sizes.size()) {
        throw expected(text);
      }
      return new BlockSizeList(sizes);
    }

    private static TypeConversionException expected(String found) {
      return new TypeConversionException(
          "expected two block sizes or more, each once, such as 64,128,1024, found '"
              + found
              + "'");
    }
  }
}
