package org.restpoint.adapters.mqtt;

/**
 * What an instruction inbox has seen: {@code received = delivered + rejected + fetchedAgain}, after
 * what waits has been delivered.
 *
 * @param received messages that arrived, one sent again by the broker counted again
 * @param delivered those handed to the consumer
 * @param rejected those longer than an instruction can be; acknowledged, so they do not come again
 * @param fetchedAgain those left with the broker for a later connection: it ended first, or too
 *     many came at once
 * @param acknowledged those that the broker has been told to forget
 */
public record InboxCounts(
    long received, long delivered, long rejected, long fetchedAgain, long acknowledged) {}
