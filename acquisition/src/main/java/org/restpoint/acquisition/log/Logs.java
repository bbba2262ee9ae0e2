package org.restpoint.acquisition.log;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.jul.LevelChangePropagator;
import ch.qos.logback.core.status.NopStatusListener;
import java.io.OutputStream;
import org.restpoint.config.station.LogStyle;
import org.slf4j.LoggerFactory;
import org.slf4j.bridge.SLF4JBridgeHandler;
import org.slf4j.event.Level;

/**
 * Sets up the log, all of it here: no file is looked for. Everything of the service's own is shown
 * from the chosen level on, libraries only from WARN on, whichever of the two logging interfaces
 * they use.
 */
public final class Logs {

  private static final String OWN = "org.restpoint";

  /** The embedded broker is ended without waiting for idle threads, which this class warns of. */
  private static final String BROKER_THREADS = "io.moquette.broker.NewNettyAcceptor";

  private Logs() {}

  /** From INFO on, to standard error. */
  public static void configure(LogStyle style) {
    configure(style, Level.INFO, System.err);
  }

  /**
   * Sets up the log anew; what was set up before is undone.
   *
   * @param style plain lines or JSON
   * @param level from which level on the service's own events are shown; from DEBUG on plain lines
   *     are followed by the stack traces of what was thrown
   * @param target where the lines go, UTF-8; never closed
   */
  public static void configure(LogStyle style, Level level, OutputStream target) {
    LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
    context.reset();
    // Hands the levels on to java.util.logging, so that what is not shown costs nothing there.
    LevelChangePropagator levels = new LevelChangePropagator();
    levels.setContext(context);
    levels.setResetJUL(true);
    levels.start();
    context.addListener(levels);
    setUp(context, style, level, target);
    SLF4JBridgeHandler.removeHandlersForRootLogger();
    SLF4JBridgeHandler.install();
  }

  /** The part that can be done while the logging interface is still starting. */
  static void setUp(LoggerContext context, LogStyle style, Level level, OutputStream target) {
    NopStatusListener silence = new NopStatusListener();
    context.getStatusManager().clear();
    context.getStatusManager().add(silence);
    LineAppender appender =
        new LineAppender(LineLayout.of(style, level.toInt() <= Level.DEBUG.toInt()), target);
    appender.setContext(context);
    appender.setName("log");
    appender.start();
    Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    root.setLevel(ch.qos.logback.classic.Level.WARN);
    context.getLogger(BROKER_THREADS).setLevel(ch.qos.logback.classic.Level.ERROR);
    root.detachAndStopAllAppenders();
    root.addAppender(appender);
    context.getLogger(OWN).setLevel(ch.qos.logback.classic.Level.convertAnSLF4JLevel(level));
  }
}
