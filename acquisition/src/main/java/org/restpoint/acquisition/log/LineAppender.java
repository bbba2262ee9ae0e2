package org.restpoint.acquisition.log;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.AppenderBase;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Writes each event at once, in one piece, to a stream that is not its own: it never closes it. */
final class LineAppender extends AppenderBase<ILoggingEvent> {

  private final LineLayout layout;
  private final OutputStream target;

  LineAppender(LineLayout layout, OutputStream target) {
    this.layout = layout;
    this.target = target;
  }

  @Override
  protected void append(ILoggingEvent event) {
    byte[] line = (layout.write(event) + "\n").getBytes(StandardCharsets.UTF_8);
    try {
      target.write(line);
      target.flush();
    } catch (IOException e) {
      // Nobody reads the log any more, so the log cannot say so; the service goes on.
      addError("the log's stream refuses to be written", e);
    }
  }
}
