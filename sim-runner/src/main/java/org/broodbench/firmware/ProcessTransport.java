package org.broodbench.firmware;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Firmware as a program that speaks on its standard input and output. */
public final class ProcessTransport implements Transport {
  private static final int KEPT_BYTES = 2000;
  private static final long END_MILLIS = 500;

  private final Process process;
  private final List<ProcessHandle> family = new ArrayList<>();
  private final byte[] said = new byte[KEPT_BYTES];
  private int saidLength;
  private boolean closed;

  private ProcessTransport(Process process) {
    this.process = process;
    Thread listener = new Thread(this::listen, "firmware standard error");
    listener.setDaemon(true);
    listener.start();
  }

  /**
   * An opener for a command line: words parted by spaces, quotes keep a word together. No shell.
   *
   * @throws IllegalArgumentException where a quote is not closed or there is no word
   */
  public static Opener of(String commandLine) {
    List<String> words = words(commandLine);
    return () -> new ProcessTransport(new ProcessBuilder(words).start());
  }

  static List<String> words(String commandLine) {
    List<String> words = new ArrayList<>();
    StringBuilder word = new StringBuilder();
    boolean inWord = false;
    char quote = 0;
    for (char c : commandLine.toCharArray()) {
      if (quote != 0) {
        if (c == quote) {
          quote = 0;
        } else {
          word.append(c);
        }
      } else if (c == '"' || c == '\'') {
        quote = c;
        inWord = true;
      } else if (Character.isWhitespace(c)) {
        if (inWord) {
          words.add(word.toString());
          word.setLength(0);
          inWord = false;
        }
      } else {
        word.append(c);
        inWord = true;
      }
    }
    if (quote != 0) {
      throw new IllegalArgumentException("a quote is not closed");
    }
    if (inWord) {
      words.add(word.toString());
    }
    if (words.isEmpty()) {
      throw new IllegalArgumentException("no program is named");
    }
    return words;
  }

  private void listen() {
    byte[] some = new byte[1024];
    try (InputStream err = process.getErrorStream()) {
      for (int n = err.read(some); n >= 0; n = err.read(some)) {
        synchronized (said) {
          int room = Math.min(n, KEPT_BYTES - saidLength);
          System.arraycopy(some, 0, said, saidLength, Math.max(0, room));
          saidLength += Math.max(0, room);
        }
      }
    } catch (IOException e) {
      // the program is gone, and with it what it could say
      return;
    }
  }

  @Override
  public InputStream in() {
    return process.getInputStream();
  }

  @Override
  public OutputStream out() {
    return process.getOutputStream();
  }

  @Override
  public boolean reliable() {
    return true;
  }

  private boolean waited() {
    try {
      return process.waitFor(END_MILLIS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  @Override
  public String ended() {
    String text;
    if (!waited()) {
      text = "the program closed its standard output and went on running";
    } else if (process.exitValue() > 128) {
      text = "the program was ended by signal " + (process.exitValue() - 128);
    } else {
      text = "the program ended with exit code " + process.exitValue();
    }
    synchronized (said) {
      String words = new String(said, 0, saidLength, StandardCharsets.UTF_8).strip();
      return words.isEmpty() ? text : text + "; it said: " + words.lines().findFirst().orElse("");
    }
  }

  /** Exit codes 126 and 127 are those of a shell that could not run a program. */
  @Override
  public boolean neverBegan() {
    return waited() && (process.exitValue() == 126 || process.exitValue() == 127);
  }

  @Override
  public void close() {
    if (closed) {
      return;
    }
    closed = true;
    process.descendants().forEach(family::add);
    process.destroyForcibly();
    family.forEach(ProcessHandle::destroyForcibly);
    waited();
  }
}
