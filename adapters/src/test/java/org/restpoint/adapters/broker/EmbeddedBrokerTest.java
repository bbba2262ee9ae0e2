package org.restpoint.adapters.broker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.ServerSocket;
import java.net.Socket;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The start and the end of the broker inside the service. */
@Timeout(60)
class EmbeddedBrokerTest {

  @Test
  void aTakenPortIsToldWithWhatToDo() throws IOException {
    try (ServerSocket other = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        EmbeddedBroker broker = new EmbeddedBroker(other.getLocalPort())) {
      assertThatThrownBy(broker::start)
          .isInstanceOf(EmbeddedBrokerException.class)
          .hasMessage(
              "the embedded broker cannot listen on 127.0.0.1:%d (Address already in use). Stop the"
                      .formatted(other.getLocalPort())
                  + " program that holds the port, or give broker another port");
    }
  }

  @Test
  void thePortIsFreeAgainAfterTheEnd() throws EmbeddedBrokerException, IOException {
    EmbeddedBroker first = new EmbeddedBroker(0);
    int port = first.start();
    first.close();
    first.close();
    try (ServerSocket reused = new ServerSocket()) {
      reused.setReuseAddress(true);
      reused.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
      assertThat(reused.isBound()).isTrue();
    }
  }

  @Test
  void onlyThisMachineReachesIt() throws EmbeddedBrokerException, IOException {
    try (EmbeddedBroker broker = new EmbeddedBroker(0)) {
      int port = broker.start();
      NetworkInterface.networkInterfaces()
          .flatMap(NetworkInterface::inetAddresses)
          .filter(address -> address instanceof Inet4Address && !address.isLoopbackAddress())
          .forEach(
              address ->
                  assertThatThrownBy(() -> new Socket(address, port).close())
                      .as("%s", address)
                      .isInstanceOf(IOException.class));
      try (Socket near = new Socket(InetAddress.getLoopbackAddress(), port)) {
        assertThat(near.isConnected()).isTrue();
      }
    }
  }

  @Test
  void itIsStartedOnceAndNotAfterItsEnd() throws EmbeddedBrokerException {
    EmbeddedBroker broker = new EmbeddedBroker(0);
    broker.start();
    assertThatThrownBy(broker::start).isInstanceOf(IllegalStateException.class);
    broker.close();
    assertThatThrownBy(broker::start).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> new EmbeddedBroker(70_000))
        .hasMessage("a TCP port is 0 to 65535, found 70000");
  }
}
