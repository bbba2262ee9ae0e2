package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.net.URI;
import java.time.Duration;
import java.time.InstantSource;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The sockets under the MQTT client. */
@Timeout(60)
class GuardedSocketFactoryTest {

  @Test
  void smallPacketsAreSentAtOnce() throws IOException {
    try (Socket socket = new GuardedSocketFactory().createSocket()) {
      assertThat(socket.getTcpNoDelay()).isTrue();
    }
  }

  @Test
  void nothingIsReadBeforeTheFirstPacketIsSent() throws IOException {
    try (ServerSocket listening = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        Socket near = new GuardedSocketFactory().createSocket()) {
      near.connect(listening.getLocalSocketAddress());
      near.setSoTimeout(20);
      listening.accept().close();
      assertThat(near.getInputStream().available()).isZero();
      assertThatThrownBy(() -> near.getInputStream().read())
          .isInstanceOf(SocketTimeoutException.class);
      near.getOutputStream().write(0);
      assertThat(near.getInputStream().read()).isEqualTo(-1);
    }
  }

  @Test
  void aSocketClosedHereStaysUnreadUntilTheFirstPacketHasFailed() throws IOException {
    try (ServerSocket listening = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      Socket near = new GuardedSocketFactory().createSocket();
      near.connect(listening.getLocalSocketAddress());
      near.setSoTimeout(20);
      InputStream in = near.getInputStream();
      OutputStream out = near.getOutputStream();
      near.close();
      assertThat(in.available()).isZero();
      assertThatThrownBy(in::read).isInstanceOf(SocketTimeoutException.class);
      assertThatThrownBy(() -> out.write(0)).isInstanceOf(SocketException.class);
      assertThatThrownBy(in::read).isInstanceOf(SocketException.class);
    }
  }

  @Test
  void aFactoryThatWasCutMakesNoSocketAgain() throws IOException {
    GuardedSocketFactory factory = new GuardedSocketFactory();
    try (Socket socket = factory.createSocket()) {
      factory.cut();
      factory.cut();
      assertThat(socket.isClosed()).isTrue();
      assertThatThrownBy(factory::createSocket).isInstanceOf(SocketException.class);
    }
  }

  @Test
  void noThreadIsLeftBehindByABrokerThatAcceptsAndDropsAtOnce()
      throws IOException, InterruptedException {
    String name = "drops-at-once";
    CountDownLatch dropped = new CountDownLatch(8);
    try (ServerSocket listening = new ServerSocket(0, 10, InetAddress.getLoopbackAddress())) {
      Thread dropping = new Thread(() -> drop(listening, dropped));
      dropping.setDaemon(true);
      dropping.start();
      OutboxPublisher publisher =
          new OutboxPublisher(
              BrokerAddress.anonymous(URI.create("tcp://127.0.0.1:" + listening.getLocalPort())),
              new PublisherSettings(
                  name,
                  Presence.of("online"),
                  1,
                  1,
                  new ConnectionTimes(
                      Duration.ofSeconds(2),
                      Duration.ofSeconds(2),
                      Duration.ofSeconds(2),
                      Duration.ofMillis(1),
                      Duration.ofMillis(1))),
              new MemoryOutbox(),
              new HeardTroubles(),
              InstantSource.system(),
              System::nanoTime);
      publisher.start();
      assertThat(dropped.await(40, TimeUnit.SECONDS)).isTrue();
      publisher.close();
      for (Thread thread : Thread.getAllStackTraces().keySet()) {
        if (thread.getName().contains(name)) {
          thread.join(5_000);
          assertThat(thread.isAlive()).as(thread.getName()).isFalse();
        }
      }
    }
  }

  private static void drop(ServerSocket listening, CountDownLatch dropped) {
    try {
      while (true) {
        listening.accept().close();
        dropped.countDown();
      }
    } catch (IOException e) {
      // The test is over.
    }
  }
}
