package org.restpoint.adapters.modbus;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.util.Arrays;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/** Made-up devices behind a TCP port. Closing it is switching it off. */
public final class DevicesOnNetwork implements DevicesOnWire {

  private static final int ASK_BYTES = 12;

  private final ServerSocket server = new ServerSocket();
  private final Devices devices;
  private volatile @Nullable Socket connection;
  private final AtomicInteger connections = new AtomicInteger();

  /**
   * @param port where they listen; 0 for any port that is free
   */
  public DevicesOnNetwork(Devices devices, int port) throws IOException {
    this.devices = devices;
    server.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
    server.setSoTimeout(POLL_MILLIS);
  }

  /** Where they listen. */
  public int port() {
    return server.getLocalPort();
  }

  /** How many connections there have been. */
  public int connections() {
    return connections.get();
  }

  @Override
  public boolean answerOne() {
    try {
      Socket client = connection;
      if (client == null) {
        client = server.accept();
        client.setSoTimeout(POLL_MILLIS);
        connection = client;
        connections.incrementAndGet();
      }
      return answerOne(client);
    } catch (SocketTimeoutException nobodyAsks) {
      return false;
    } catch (IOException ended) {
      hangUp();
      return false;
    }
  }

  private boolean answerOne(Socket client) throws IOException {
    InputStream in = client.getInputStream();
    int first = in.read();
    if (first < 0) {
      hangUp();
      return false;
    }
    byte[] rest = in.readNBytes(ASK_BYTES - 1);
    int transaction = first << Byte.SIZE | (rest[0] & 0xFF);
    int unit = rest[5] & 0xFF;
    byte[] pdu = Arrays.copyOfRange(rest, 6, rest.length);
    client
        .getOutputStream()
        .write(devices.answer(unit, pdu, answer -> TcpFraming.frame(transaction, unit, answer)));
    return true;
  }

  /** Ends the connection; another is taken. */
  public void hangUp() {
    try {
      Socket client = connection;
      connection = null;
      if (client != null) {
        client.close();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    hangUp();
    try {
      server.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
