package org.restpoint.acquisition.log;

import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ConfiguratorRank;
import ch.qos.logback.core.spi.ContextAwareBase;
import org.restpoint.config.station.LogStyle;
import org.slf4j.event.Level;

/**
 * The log until {@link Logs#configure} is called, and for commands that never call it: warnings on
 * standard error. Found by Logback as a service, it keeps Logback from looking for files and from
 * writing debug lines on standard output, where results go.
 */
@ConfiguratorRank(ConfiguratorRank.CUSTOM_TOP_PRIORITY)
public final class QuietStart extends ContextAwareBase implements Configurator {

  @Override
  public ExecutionStatus configure(LoggerContext context) {
    Logs.setUp(context, LogStyle.PLAIN, Level.WARN, System.err);
    return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
  }
}
