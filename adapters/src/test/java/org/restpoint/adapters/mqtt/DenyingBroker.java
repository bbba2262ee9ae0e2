package org.restpoint.adapters.mqtt;

import java.io.DataInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;

/** A peer that accepts an MQTT connection and refuses every subscription, for tests. */
final class DenyingBroker implements AutoCloseable {

  private static final int CONNECT = 1;
  private static final int SUBSCRIBE = 8;

  private final ServerSocket listening;

  DenyingBroker() {
    try {
      listening = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    Thread thread = new Thread(this::serve, "denying-broker");
    thread.setDaemon(true);
    thread.start();
  }

  URI url() {
    return URI.create("tcp://127.0.0.1:" + listening.getLocalPort());
  }

  @Override
  public void close() {
    try {
      listening.close();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private void serve() {
    try (Socket socket = listening.accept()) {
      DataInputStream in = new DataInputStream(socket.getInputStream());
      while (true) {
        int kind = in.readUnsignedByte() >> 4;
        byte[] body = in.readNBytes(in.readUnsignedByte());
        if (kind == CONNECT) {
          socket.getOutputStream().write(new byte[] {0x20, 2, 0, 0});
        } else if (kind == SUBSCRIBE) {
          socket
              .getOutputStream()
              .write(new byte[] {(byte) 0x90, 3, body[0], body[1], (byte) 0x80});
        }
      }
    } catch (IOException e) {
      // The client or the test has ended.
    }
  }
}
