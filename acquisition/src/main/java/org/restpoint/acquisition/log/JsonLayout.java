package org.restpoint.acquisition.log;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.restpoint.acquisition.event.EventJson;

/**
 * An object for a machine: {@code time}, {@code level}, {@code logger}, {@code message} and, where
 * something was thrown, {@code exception} with the whole stack trace. JSON escapes every line end,
 * so an event is one line whatever it says.
 */
record JsonLayout() implements LineLayout {

  @Override
  public String write(ILoggingEvent event) {
    ObjectNode line = EventJson.mapper().createObjectNode();
    line.put("time", LineLayout.time(event));
    line.put("level", event.getLevel().toString());
    line.put("logger", event.getLoggerName());
    line.put("message", event.getFormattedMessage());
    IThrowableProxy thrown = event.getThrowableProxy();
    if (thrown != null) {
      line.put("exception", ThrowableProxyUtil.asString(thrown));
    }
    return EventJson.write(line);
  }
}
