package org.broodbench.input;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Files of text that are read whole: of bounded size, so that no file asks for all memory. */
final class PlainText {
  /** Most bytes of a log or a vector file: four years of a row a minute are less. */
  static final int MOST_BYTES = 128 << 20;

  /** Longest line; the longest of a real log is far below. */
  static final int LONGEST_LINE = 1 << 20;

  private PlainText() {}

  /**
   * The bytes of a file.
   *
   * @param what what the file should be, for messages
   * @param most most bytes that are read
   * @throws BadInput where it cannot be read or is longer
   */
  static byte[] bytes(Path path, String what, int most) {
    byte[] bytes;
    try (InputStream in = Files.newInputStream(path)) {
      bytes = in.readNBytes(most + 1);
    } catch (NoSuchFileException e) {
      throw refused(path, "no such file", "", "");
    } catch (IOException e) {
      String found = Files.isDirectory(path) ? "a folder" : "a file that cannot be read";
      throw refused(path, found, what, "");
    }
    if (bytes.length > most) {
      String size =
          most >= 1 << 20
              ? String.format(Locale.ROOT, "%d MiB", most >> 20)
              : String.format(Locale.ROOT, "%d KiB", most >> 10);
      throw refused(
          path, "a file of more than " + size, what + " of at most " + size, "Is it that file?");
    }
    return bytes;
  }

  /**
   * The lines of a file in UTF-8 or, where it is none, in one byte a letter; without a mark of byte
   * order.
   *
   * @param what what the file should be, for messages
   * @throws BadInput where it cannot be read, is no text, or has a line without end
   */
  static List<String> lines(Path path, String what) {
    String text = text(path, what, MOST_BYTES);
    List<String> lines = new ArrayList<>();
    int from = 0;
    for (int i = 0; i <= text.length(); i++) {
      char c = i < text.length() ? text.charAt(i) : '\n';
      if (c != '\n' && c != '\r') {
        continue;
      }
      if (i - from > LONGEST_LINE) {
        throw new BadInput(
            List.of(
                new Problem(
                    path.toString(),
                    lines.size() + 1,
                    0,
                    "",
                    "a line of over a million characters",
                    what + " in lines",
                    "")));
      }
      lines.add(text.substring(from, i));
      if (c == '\r' && i + 1 < text.length() && text.charAt(i + 1) == '\n') {
        i++;
      }
      from = i + 1;
    }
    return lines;
  }

  /** The same, as one text. */
  static String text(Path path, String what, int most) {
    byte[] bytes = bytes(path, what, most);
    String text;
    try {
      text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      // loggers that know no UTF-8 write the sign of degrees as one byte
      text = new String(bytes, StandardCharsets.ISO_8859_1);
    }
    if (text.indexOf('\0') >= 0) {
      throw refused(
          path,
          "bytes of value zero, so no plain text",
          what + " as text in UTF-8",
          "Export or save it as plain text (CSV, UTF-8).");
    }
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }

  private static BadInput refused(Path path, String found, String allowed, String hint) {
    return new BadInput(List.of(new Problem(path.toString(), 0, 0, "", found, allowed, hint)));
  }
}
