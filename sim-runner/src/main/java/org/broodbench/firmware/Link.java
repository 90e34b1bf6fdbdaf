package org.broodbench.firmware;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * Bytes to and from the firmware with time-outs. One thread writes and one reads, so that a
 * firmware which does not read, does not write or writes without end cannot hold up the bench.
 * There is no clock: time is the waiting for an empty queue.
 */
final class Link implements AutoCloseable {
  private static final byte[] END = new byte[0];
  private static final int CHUNK_BYTES = 1 << 13;

  /** Room for every answer that may be on its way, were each a chunk of its own. */
  private static final int COMING_CHUNKS = 4096;

  private static final int GOING_CHUNKS = 64;
  private static final int SLICE_MILLIS = 20;

  /** A longer line is nobody's answer. */
  static final int LONGEST_LINE = 1000;

  private final Transport transport;
  private final BlockingQueue<byte[]> coming = new ArrayBlockingQueue<>(COMING_CHUNKS);
  private final BlockingQueue<byte[]> going = new ArrayBlockingQueue<>(GOING_CHUNKS);
  private final Thread reader;
  private final Thread writer;

  private byte[] chunk = END;
  private int at;
  private boolean ended;
  private final byte[] line = new byte[LONGEST_LINE];
  private int length;
  private boolean delivered;
  private long waitedMillis;

  Link(Transport transport) {
    this.transport = transport;
    reader = new Thread(this::read, "firmware reader");
    writer = new Thread(this::write, "firmware writer");
    reader.setDaemon(true);
    writer.setDaemon(true);
    reader.start();
    writer.start();
  }

  private void read() {
    byte[] some = new byte[CHUNK_BYTES];
    try {
      InputStream in = transport.in();
      for (int n = in.read(some); n >= 0; n = in.read(some)) {
        if (n > 0) {
          coming.put(Arrays.copyOf(some, n));
        }
      }
      coming.put(END);
    } catch (IOException e) {
      try {
        coming.put(END);
      } catch (InterruptedException interrupted) {
        Thread.currentThread().interrupt();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void write() {
    try {
      OutputStream out = transport.out();
      while (true) {
        out.write(going.take());
        out.flush();
      }
    } catch (IOException e) {
      // what the reader sees tells how it ended
      return;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /**
   * Sends bytes.
   *
   * @throws FirmwareFault where the firmware takes nothing for so long
   */
  void send(byte[] bytes, long timeoutMillis) throws FirmwareFault {
    for (long left = timeoutMillis; left > 0; left -= SLICE_MILLIS) {
      try {
        if (going.offer(bytes, SLICE_MILLIS, TimeUnit.MILLISECONDS)) {
          return;
        }
        waitedMillis += SLICE_MILLIS;
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new FirmwareFault(FirmwareFault.Kind.HANG, "the bench was interrupted");
      }
      if (!reader.isAlive()) {
        return;
      }
    }
    throw new FirmwareFault(
        FirmwareFault.Kind.HANG, "it took no line for " + timeoutMillis / 1000.0 + " s");
  }

  /**
   * Sends one line at once; for a line that is sent only after the answer to the one before it, so
   * that there is always room for it.
   */
  void sendNow(byte[] bytes) {
    try {
      OutputStream out = transport.out();
      out.write(bytes);
      out.flush();
    } catch (IOException e) {
      // what the reader sees tells how it ended
      return;
    }
  }

  /**
   * The next line without its end, or null when none ended within the time. Its length is {@link
   * #lineLength}.
   *
   * @throws FirmwareFault CRASH at the end of the stream
   */
  byte[] receive(long timeoutMillis) throws FirmwareFault {
    long left = timeoutMillis;
    if (delivered) {
      delivered = false;
      length = 0;
    }
    while (true) {
      while (at < chunk.length) {
        byte b = chunk[at++];
        if (b == '\n') {
          delivered = true;
          return line;
        }
        if (b == '\r') {
          continue;
        }
        if (length == LONGEST_LINE) {
          throw new FirmwareFault(
              FirmwareFault.Kind.NONSENSE,
              "it sent more than " + LONGEST_LINE + " bytes without the end of a line");
        }
        line[length++] = b;
      }
      if (ended) {
        throw new FirmwareFault(FirmwareFault.Kind.CRASH, transport.ended());
      }
      if (left <= 0) {
        return null;
      }
      left = next(left);
    }
  }

  /** Whether a line has begun and not ended. */
  boolean partial() {
    return !delivered && length > 0;
  }

  private long next(long left) throws FirmwareFault {
    long wait = Math.min(left, SLICE_MILLIS);
    try {
      byte[] more = coming.poll(wait, TimeUnit.MILLISECONDS);
      if (more == null) {
        waitedMillis += wait;
        return left - wait;
      }
      if (more == END) {
        ended = true;
      }
      chunk = more;
      at = 0;
      return left;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new FirmwareFault(FirmwareFault.Kind.HANG, "the bench was interrupted");
    }
  }

  int lineLength() {
    return length;
  }

  /** Time spent waiting for the firmware, in slices of 20 ms. */
  long waitedMillis() {
    return waitedMillis;
  }

  boolean reliable() {
    return transport.reliable();
  }

  boolean neverBegan() {
    return ended && transport.neverBegan();
  }

  @Override
  public void close() {
    transport.close();
    reader.interrupt();
    writer.interrupt();
  }
}
