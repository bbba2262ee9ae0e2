package org.restpoint.adapters.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.restpoint.adapters.wire.WireSource.Attempt;

@Timeout(60)
class TcpWireSourceTest {

  private static ServerSocket server() throws IOException {
    return new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
  }

  private static TcpWireSource to(String host, int port) {
    return new TcpWireSource(new TcpAddress(host, port));
  }

  private static Attempt.Refused refused(TcpWireSource source) {
    return (Attempt.Refused) source.open(() -> {});
  }

  @Test
  void bytesGoBothWaysUntilTheOtherEndHangsUp() throws Exception {
    byte[] bytes = new byte[8];
    Wire closed;
    try (ServerSocket server = server();
        Wire wire =
            ((Attempt.Opened) to("127.0.0.1", server.getLocalPort()).open(() -> {})).wire()) {
      closed = wire;
      try (Socket device = server.accept()) {
        assertThat(wire.write(new byte[] {1, 2, 3})).isTrue();
        assertThat(device.getInputStream().readNBytes(3)).containsExactly(1, 2, 3);
        assertThat(wire.read(bytes)).isZero();
        device.getOutputStream().write(new byte[] {4, 5});
        assertThat(wire.read(bytes)).isPositive();
        assertThat(bytes[0]).isEqualTo((byte) 4);
        device.getOutputStream().write(new byte[3000]);
      }
      wire.discardInput();
      int last = wire.read(bytes);
      while (last > 0) {
        last = wire.read(bytes);
      }
      assertThat(last).isNegative();
    }
    assertThat(closed.read(bytes)).isNegative();
    assertThat(closed.write(bytes)).isFalse();
  }

  @Test
  void aPortNobodyListensOnIsRefused() throws Exception {
    int port;
    try (ServerSocket server = server()) {
      port = server.getLocalPort();
    }
    Attempt.Refused refused = refused(to("127.0.0.1", port));
    assertThat(refused.away()).isTrue();
    assertThat(refused.trouble().code()).isEqualTo("connection-refused");
    assertThat(refused.trouble().text())
        .isEqualTo(
            "127.0.0.1:%d refuses the connection: nothing listens there, or it takes no more connections",
            port);
  }

  @Test
  void aHostThatIsNotKnownIsToldAsThat() {
    assertThat(refused(to("no-such-device.invalid", 502)).trouble().code())
        .isEqualTo("connection-unknown-host");
  }

  @Test
  void aLossAndAReturnAreToldWithTheAddress() {
    TcpWireSource source = to("::1", 502);
    assertThat(source.name()).isEqualTo("TCP connection to [::1]:502");
    assertThat(source.lost().text()).isEqualTo("the connection to [::1]:502 was lost");
    assertThat(source.back().text()).isEqualTo("[::1]:502 is connected to");
  }

  @Test
  void anAddressHasAHostAndAPort() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TcpAddress(" ", 502))
        .withMessage("the host has no name");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TcpAddress("gateway", 0))
        .withMessage("a port is 1 to 65535, not 0");
  }
}
