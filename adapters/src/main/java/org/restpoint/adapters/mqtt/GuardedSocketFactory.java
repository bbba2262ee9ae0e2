package org.restpoint.adapters.mqtt;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import javax.net.SocketFactory;
import org.jspecify.annotations.Nullable;

/**
 * Makes the one socket of one connection, sends small packets at once (TCP_NODELAY), and can cut it
 * from outside: the client has no way to end a connection whose peer does not answer.
 */
final class GuardedSocketFactory extends SocketFactory {

  private @Nullable Socket socket;
  private boolean cut;

  @Override
  public synchronized Socket createSocket() throws IOException {
    if (cut) {
      throw new SocketException("the connection was given up");
    }
    GuardedSocket made = new GuardedSocket();
    made.setTcpNoDelay(true);
    socket = made;
    return made;
  }

  /** Closes the socket, and makes no other. Idempotent. */
  synchronized void cut() {
    cut = true;
    if (socket != null) {
      try {
        socket.close();
      } catch (IOException e) {
        // A socket that cannot be closed in order is closed all the same: nothing is left to do.
      }
    }
  }

  @Override
  public Socket createSocket(String host, int port) throws IOException {
    throw new SocketException("only unconnected sockets are made here");
  }

  @Override
  public Socket createSocket(String host, int port, InetAddress localHost, int localPort)
      throws IOException {
    return createSocket(host, port);
  }

  @Override
  public Socket createSocket(InetAddress host, int port) throws IOException {
    return createSocket(host.getHostName(), port);
  }

  @Override
  public Socket createSocket(InetAddress host, int port, InetAddress localHost, int localPort)
      throws IOException {
    return createSocket(host, port);
  }
}
