package org.restpoint.adapters.wire;

import java.io.IOException;
import java.net.ConnectException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.StandardSocketOptions;
import java.time.Duration;
import org.restpoint.adapters.link.LinkTrouble;

/** A TCP connection as the wire of a bus. The host's name is looked up anew on each attempt. */
public final class TcpWireSource implements WireSource {

  /** Of no greater length than the pause between attempts, so that it can be closed in time. */
  private static final Duration CONNECT_WITHIN = Duration.ofSeconds(1);

  private final TcpAddress address;

  /**
   * @param address where to connect to
   */
  public TcpWireSource(TcpAddress address) {
    this.address = address;
  }

  @Override
  public String name() {
    return "TCP connection to " + address;
  }

  /** A connection is not ended before the process is, so {@code farewell} is never run. */
  @Override
  public Attempt open(Runnable farewell) {
    InetSocketAddress resolved = new InetSocketAddress(address.host(), address.port());
    if (resolved.isUnresolved()) {
      return refused(
          "connection-unknown-host",
          "the host of %s is not known".formatted(address),
          "Check its spelling, or write its address; the name service of this machine does not know it");
    }
    Socket socket = new Socket();
    try {
      socket.connect(resolved, Math.toIntExact(CONNECT_WITHIN.toMillis()));
      socket.setOption(StandardSocketOptions.TCP_NODELAY, true);
      socket.setOption(StandardSocketOptions.SO_KEEPALIVE, true);
      return new Attempt.Opened(new TcpWire(socket));
    } catch (IOException e) {
      TcpWire.close(socket);
      return refused(e);
    }
  }

  private Attempt refused(IOException e) {
    if (e instanceof SocketTimeoutException) {
      return refused(
          "connection-timeout",
          "%s does not answer".formatted(address),
          "Check that the device is on and in this network, the address, and firewalls between");
    }
    if (e instanceof ConnectException) {
      return refused(
          "connection-refused",
          "%s refuses the connection: nothing listens there, or it takes no more connections"
              .formatted(address),
          "Check the port (Modbus TCP has 502), and close other programs that are connected to it");
    }
    return refused(
        "connection-unreachable",
        "%s cannot be reached: %s".formatted(address, e.getMessage()),
        "Check the network: cable, Wi-Fi, VPN");
  }

  private static Attempt refused(String code, String text, String remedy) {
    return new Attempt.Refused(new LinkTrouble(code, text, remedy), true);
  }

  @Override
  public LinkTrouble lost() {
    return new LinkTrouble(
        "connection-lost",
        "the connection to %s was lost".formatted(address),
        "Check that the device is on, and the network; it is connected to again by itself");
  }

  @Override
  public LinkTrouble back() {
    return new LinkTrouble("connection-back", "%s is connected to".formatted(address), "");
  }
}
