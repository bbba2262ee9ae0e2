package org.restpoint.acquisition.metrics;

import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryMXBean;
import java.lang.management.RuntimeMXBean;
import java.lang.management.ThreadMXBean;
import java.util.List;
import java.util.function.Supplier;
import java.util.function.ToLongFunction;

/**
 * A few figures of the virtual machine, without tags: each is a sum over pools and collectors,
 * because probe names are the only tag values.
 */
final class JvmMeters {

  private static final double MILLISECONDS_PER_SECOND = 1000;

  private JvmMeters() {}

  static void register(MeterRegistry registry) {
    MemoryMXBean memory = ManagementFactory.getMemoryMXBean();
    gauge(
        registry,
        "jvm.heap.used",
        "bytes",
        "Heap in use",
        () -> memory.getHeapMemoryUsage().getUsed());
    gauge(
        registry,
        "jvm.heap.max",
        "bytes",
        "The most the heap may grow to; -1 when there is no limit",
        () -> memory.getHeapMemoryUsage().getMax());
    gauge(
        registry,
        "jvm.nonheap.used",
        "bytes",
        "Memory in use outside the heap",
        () -> memory.getNonHeapMemoryUsage().getUsed());
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    gauge(registry, "jvm.threads", "threads", "Threads alive", threads::getThreadCount);
    RuntimeMXBean runtime = ManagementFactory.getRuntimeMXBean();
    gauge(
        registry,
        "process.uptime",
        "seconds",
        "Time since the process started",
        () -> runtime.getUptime() / MILLISECONDS_PER_SECOND);
    collections(registry);
  }

  private static void collections(MeterRegistry registry) {
    // The platform keeps its collectors for good, so the counters' weak reference stays alive.
    List<GarbageCollectorMXBean> collectors = ManagementFactory.getGarbageCollectorMXBeans();
    FunctionCounter.builder(
            "jvm.gc.collections",
            ManagementFactory.getRuntimeMXBean(),
            any -> sum(collectors, GarbageCollectorMXBean::getCollectionCount))
        .description("Garbage collections")
        .register(registry);
    FunctionCounter.builder(
            "jvm.gc",
            ManagementFactory.getRuntimeMXBean(),
            any ->
                sum(collectors, GarbageCollectorMXBean::getCollectionTime)
                    / MILLISECONDS_PER_SECOND)
        .description("Time spent in garbage collections")
        .baseUnit("seconds")
        .register(registry);
  }

  private static double sum(
      List<GarbageCollectorMXBean> collectors, ToLongFunction<GarbageCollectorMXBean> figure) {
    // A collector that keeps no count says -1.
    return collectors.stream().mapToLong(figure).filter(value -> value > 0).sum();
  }

  private static void gauge(
      MeterRegistry registry,
      String name,
      String unit,
      String description,
      Supplier<Number> value) {
    Gauge.builder(name, value).description(description).baseUnit(unit).register(registry);
  }
}
