package org.broodbench.study;

import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * What a long study has finished, one line a piece, so that it can go on after a kill. Every line
 * carries its checksum; a line that was cut or damaged counts as not written. The first line says
 * which study it belongs to: the journal of another one is begun anew.
 */
public final class Journal implements Closeable {
  private static final String HEAD = "study";

  private final Map<String, String> finished;
  private final Writer out;

  private Journal(Map<String, String> finished, Writer out) {
    this.finished = finished;
    this.out = out;
  }

  /**
   * Opens a journal, or begins one.
   *
   * @param file where it stands; its folder must be there
   * @param study what tells this study from any other; one line
   */
  public static Journal open(Path file, String study) throws IOException {
    Map<String, String> before = new LinkedHashMap<>();
    if (Files.exists(file)) {
      // bytes that are no text are damage like any other: their line has a wrong checksum
      String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
      before.putAll(read(text.lines().toList()));
    }
    Map<String, String> finished = new HashMap<>();
    boolean goesOn = study.equals(before.remove(HEAD));
    if (goesOn) {
      finished.putAll(before);
    }
    // written anew, so that a line that was cut cannot run into the next one
    StringBuilder text = new StringBuilder(line(HEAD, study));
    if (goesOn) {
      before.forEach((key, value) -> text.append(line(key, value)));
    }
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    Files.writeString(fresh, text, StandardCharsets.UTF_8);
    // in one piece: a plain move would take the old one away first
    Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
    Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8, StandardOpenOption.APPEND);
    return new Journal(finished, out);
  }

  private static Map<String, String> read(List<String> lines) {
    Map<String, String> found = new LinkedHashMap<>();
    for (String line : lines) {
      String[] parts = line.split("\t", 3);
      if (parts.length == 3 && parts[0].equals(sum(parts[1] + "\t" + parts[2]))) {
        found.put(parts[1], parts[2]);
      }
    }
    return found;
  }

  private static String sum(String text) {
    CRC32 crc = new CRC32();
    crc.update(text.getBytes(StandardCharsets.UTF_8));
    return String.format(Locale.ROOT, "%08x", crc.getValue());
  }

  private static String line(String key, String value) {
    String text = key + "\t" + value;
    return sum(text) + "\t" + text + "\n";
  }

  /** What was finished before under a name; null if it was not. */
  public String get(String key) {
    return finished.get(key);
  }

  /** How many pieces were finished before. */
  public int size() {
    return finished.size();
  }

  /**
   * Notes a finished piece; it is in the file when this returns.
   *
   * @param key without tab or line end
   * @param value without line end
   */
  public void put(String key, String value) {
    try {
      out.write(line(key, value));
      out.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
