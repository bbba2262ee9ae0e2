package org.restpoint.adapters.wire;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.SocketTimeoutException;

/** An open TCP connection. */
final class TcpWire implements Wire {

  private static final int READ_TIMEOUT_MILLIS = 100;
  private static final int DISCARD_BYTES = 1024;

  private final Socket socket;
  private final InputStream in;
  private final OutputStream out;

  TcpWire(Socket socket) throws IOException {
    this.socket = socket;
    socket.setSoTimeout(READ_TIMEOUT_MILLIS);
    this.in = socket.getInputStream();
    this.out = socket.getOutputStream();
  }

  @Override
  public int read(byte[] into) {
    try {
      return in.read(into);
    } catch (SocketTimeoutException e) {
      return 0;
    } catch (IOException e) {
      return -1;
    }
  }

  @Override
  public boolean write(byte[] bytes) {
    try {
      out.write(bytes);
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  /** What has come is passed over; that the connection has ended is left for the next read. */
  @Override
  public void discardInput() {
    try {
      int waiting = in.available();
      while (waiting > 0) {
        waiting -= Math.max(1, in.read(new byte[Math.min(waiting, DISCARD_BYTES)]));
      }
    } catch (IOException e) {
      // A broken connection shows itself at the next read or write, which says so.
    }
  }

  @Override
  public void close() {
    close(socket);
  }

  /** Closes at once; bytes that were not sent yet are of no use to anybody any more. */
  static void close(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      // It is gone all the same.
    }
  }
}
