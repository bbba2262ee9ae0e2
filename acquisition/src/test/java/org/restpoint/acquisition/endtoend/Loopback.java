package org.restpoint.acquisition.endtoend;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;

/** Ports of this machine. */
final class Loopback {

  private Loopback() {}

  /** Listens on a free port and never answers. */
  static ServerSocket taken() {
    try {
      return new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A broker's address at which nothing listens. */
  static URI deadBroker() {
    try (ServerSocket socket = taken()) {
      return URI.create("tcp://127.0.0.1:" + socket.getLocalPort());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Asks over HTTP. */
  static HttpResponse<String> get(URI url) {
    try {
      return HttpClient.newHttpClient()
          .send(HttpRequest.newBuilder(url).build(), HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
