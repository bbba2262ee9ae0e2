package org.restpoint.adapters.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** A wire to a broker on loopback that can be cut, for tests: then nobody says goodbye. */
final class CuttableWire implements AutoCloseable {

  private final ServerSocket listening;
  private final int brokerPort;
  private final List<Socket> ends = new CopyOnWriteArrayList<>();

  CuttableWire(int brokerPort) {
    this.brokerPort = brokerPort;
    try {
      listening = new ServerSocket(0, 10, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    daemon(this::accept);
  }

  URI url() {
    return URI.create("tcp://127.0.0.1:" + listening.getLocalPort());
  }

  /** Ends every connection, and takes no more. */
  void cut() {
    try {
      listening.close();
      for (Socket end : ends) {
        end.close();
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    cut();
  }

  private void accept() {
    try {
      while (true) {
        Socket near = listening.accept();
        Socket far = new Socket(InetAddress.getLoopbackAddress(), brokerPort);
        ends.addAll(List.of(near, far));
        daemon(() -> carry(near, far));
        daemon(() -> carry(far, near));
      }
    } catch (IOException e) {
      // Cut.
    }
  }

  private static void carry(Socket from, Socket to) {
    byte[] buffer = new byte[8_192];
    try {
      InputStream in = from.getInputStream();
      OutputStream out = to.getOutputStream();
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        out.write(buffer, 0, n);
        out.flush();
      }
      to.shutdownOutput();
    } catch (IOException e) {
      // Cut.
    }
  }

  private static void daemon(Runnable work) {
    Thread thread = new Thread(work, "wire");
    thread.setDaemon(true);
    thread.start();
  }
}
