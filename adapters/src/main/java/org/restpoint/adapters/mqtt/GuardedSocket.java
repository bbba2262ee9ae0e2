package org.restpoint.adapters.mqtt;

import java.io.FilterInputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * A socket that is not read before something has been written to it.
 *
 * <p>The client starts its reading thread before its writing thread; when the peer closes in
 * between, the client takes itself apart while it is still being put together, and the thread that
 * does it waits for ever (Eclipse Paho issue 850). The first packet of MQTT is the client's, so
 * nothing is lost by waiting for it.
 */
final class GuardedSocket extends Socket {

  private static final long GLANCE_MILLIS = 1_000;

  private final CountDownLatch spoken = new CountDownLatch(1);

  @Override
  public InputStream getInputStream() throws IOException {
    return new ListensSecond(super.getInputStream());
  }

  @Override
  public OutputStream getOutputStream() throws IOException {
    return new SpeaksFirst(super.getOutputStream());
  }

  @Override
  public synchronized void close() throws IOException {
    spoken.countDown();
    super.close();
  }

  private final class ListensSecond extends FilterInputStream {

    ListensSecond(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      awaitTheFirstWord();
      return super.read();
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
      awaitTheFirstWord();
      return super.read(bytes, offset, length);
    }

    /** The client reads again after a time-out, as it does on a silent connection. */
    private void awaitTheFirstWord() throws IOException {
      try {
        if (!spoken.await(GLANCE_MILLIS, TimeUnit.MILLISECONDS)) {
          throw new SocketTimeoutException("nothing has been sent yet");
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IOException("interrupted before the first packet was sent", e);
      }
    }
  }

  private final class SpeaksFirst extends FilterOutputStream {

    SpeaksFirst(OutputStream out) {
      super(out);
    }

    @Override
    public void write(int value) throws IOException {
      out.write(value);
      spoken.countDown();
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
      out.write(bytes, offset, length);
      spoken.countDown();
    }

    @Override
    public void flush() throws IOException {
      out.flush();
      spoken.countDown();
    }
  }
}
