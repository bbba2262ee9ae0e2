package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.fail;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * A peer that accepts an MQTT connection and its first message, and then acknowledges nothing, for
 * tests. What came on a connection is known when the client has given it up.
 */
final class DeafBroker implements AutoCloseable {

  private static final int CONNECT = 1;
  private static final int PUBLISH = 3;

  private final ServerSocket listening;
  private final BlockingQueue<List<String>> ended = new LinkedBlockingQueue<>();

  DeafBroker() {
    try {
      listening = new ServerSocket(0, 10, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    Thread thread = new Thread(this::serve, "deaf-broker");
    thread.setDaemon(true);
    thread.start();
  }

  URI url() {
    return URI.create("tcp://127.0.0.1:" + listening.getLocalPort());
  }

  /** The payloads that came on the next connection that has ended, the presence first. */
  List<String> nextConnection() {
    try {
      @Nullable List<String> payloads = ended.poll(30, TimeUnit.SECONDS);
      return payloads == null ? fail("no connection has ended") : payloads;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
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
    while (!listening.isClosed()) {
      List<String> payloads = new ArrayList<>();
      try (Socket socket = listening.accept()) {
        converse(socket, payloads);
      } catch (IOException e) {
        // The client has given the connection up, or the test is over.
      }
      ended.add(payloads);
    }
  }

  private static void converse(Socket socket, List<String> payloads) throws IOException {
    DataInputStream in = new DataInputStream(socket.getInputStream());
    OutputStream out = socket.getOutputStream();
    while (true) {
      int kind = in.readUnsignedByte() >> 4;
      byte[] body = in.readNBytes(length(in));
      if (kind == CONNECT) {
        out.write(new byte[] {0x20, 2, 0, 0});
      } else if (kind == PUBLISH) {
        int topic = 2 + (body[0] & 0xFF) * 256 + (body[1] & 0xFF);
        if (payloads.isEmpty()) {
          out.write(new byte[] {0x40, 2, body[topic], body[topic + 1]});
        }
        payloads.add(new String(body, topic + 2, body.length - topic - 2, StandardCharsets.UTF_8));
      }
    }
  }

  private static int length(DataInputStream in) throws IOException {
    int length = 0;
    for (int shift = 0; shift < 28; shift += 7) {
      int next = in.readUnsignedByte();
      length |= (next & 0x7F) << shift;
      if (next < 0x80) {
        return length;
      }
    }
    throw new EOFException("a length has at most four bytes");
  }
}
