package org.restpoint.config.station;

/**
 * Where metrics and health are served.
 *
 * @param host a loopback address or {@code localhost}
 * @param port TCP port; 0 takes a free one
 */
public record HttpAddress(String host, int port) {}
