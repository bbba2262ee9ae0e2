package org.restpoint.adapters.mqtt;

import java.io.FilterInputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * A socket that is not read before it has been written to, or the writing has failed.
 *
 * <p>The client starts its reading thread before its writing thread; when the socket ends in
 * between, from either side, the client takes itself apart while it is still being put together,
 * and the thread that does it waits for ever (Eclipse Paho issue 850). The first packet of MQTT is
 * the client's, and is written when all its threads run, so nothing is lost by waiting for it. A
 * socket closed here does not end the wait either: the first packet then fails, and that does.
 */
final class GuardedSocket extends Socket {

  private final CountDownLatch spoken = new CountDownLatch(1);
  private volatile int timeoutMillis;

  /** Kept beside, since a closed socket no longer tells it. */
  @Override
  public synchronized void setSoTimeout(int millis) throws SocketException {
    timeoutMillis = millis;
    super.setSoTimeout(millis);
  }

  @Override
  public InputStream getInputStream() throws IOException {
    return new ListensSecond(super.getInputStream());
  }

  @Override
  public OutputStream getOutputStream() throws IOException {
    return new SpeaksFirst(super.getOutputStream());
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

    /** The client asks before it reads; a socket that has ended would throw here. */
    @Override
    public int available() throws IOException {
      return spoken.getCount() == 0 ? super.available() : 0;
    }

    /** Times out as the socket does; the client then reads again, as on a silent connection. */
    private void awaitTheFirstWord() throws IOException {
      try {
        long limit = timeoutMillis == 0 ? Long.MAX_VALUE : timeoutMillis;
        if (!spoken.await(limit, TimeUnit.MILLISECONDS)) {
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
      try {
        out.write(value);
      } finally {
        spoken.countDown();
      }
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
      try {
        out.write(bytes, offset, length);
      } finally {
        spoken.countDown();
      }
    }

    @Override
    public void flush() throws IOException {
      try {
        out.flush();
      } finally {
        spoken.countDown();
      }
    }
  }
}
