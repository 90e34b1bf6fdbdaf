package org.broodbench.firmware;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;

/** Firmware on a board behind a serial port: 8 data bits, no parity, 1 stop bit. */
public final class SerialTransport implements Transport {
  /** Short, so that a closed port is noticed. */
  private static final int READ_MILLIS = 100;

  private final SerialPort port;

  private SerialTransport(SerialPort port) {
    this.port = port;
  }

  /** An opener for a port such as {@code /dev/ttyUSB0}, at so many bits a second. */
  public static Opener of(String name, int bitsPerSecond) {
    return () -> open(name, bitsPerSecond);
  }

  private static Transport open(String name, int bitsPerSecond) throws IOException {
    SerialPort port;
    try {
      port = SerialPort.getCommPort(name);
    } catch (SerialPortInvalidPortException e) {
      throw new IOException("no such serial port", e);
    }
    port.setComPortParameters(bitsPerSecond, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MILLIS, 0);
    if (!port.openPort()) {
      throw new IOException("the serial port cannot be opened: is it in use, and may you use it?");
    }
    return new SerialTransport(port);
  }

  /** Reads until the port is closed; a pause is not its end. */
  private final class Incoming extends InputStream {
    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
      byte[] some = new byte[length];
      while (port.isOpen()) {
        int count = port.readBytes(some, length);
        if (count > 0) {
          System.arraycopy(some, 0, bytes, from, count);
          return count;
        }
        if (count < 0) {
          return -1;
        }
      }
      return -1;
    }
  }

  private final class Outgoing extends OutputStream {
    @Override
    public void write(int b) throws IOException {
      write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
      if (port.writeBytes(bytes, length, from) != length) {
        throw new IOException("the serial port took less than it was given");
      }
    }
  }

  @Override
  public InputStream in() {
    return new Incoming();
  }

  @Override
  public OutputStream out() {
    return new Outgoing();
  }

  @Override
  public boolean reliable() {
    return false;
  }

  @Override
  public String ended() {
    return "the serial port was closed: was the board unplugged?";
  }

  @Override
  public boolean neverBegan() {
    return false;
  }

  @Override
  public void close() {
    port.closePort();
  }
}
