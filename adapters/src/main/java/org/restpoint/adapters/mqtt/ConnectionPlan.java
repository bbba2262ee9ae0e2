package org.restpoint.adapters.mqtt;

import java.util.Optional;

/**
 * What a client asks of each of its connections.
 *
 * @param clientId its name at the broker; letters, digits, hyphens, at most 65,535 bytes
 * @param clean whether the broker forgets the session with the connection
 * @param acknowledgesByHand whether an inbound message is acknowledged only on demand
 * @param presence the will, if it has one
 * @param mostInFlight messages that the client may have under way, of any quality of service
 */
record ConnectionPlan(
    String clientId,
    boolean clean,
    boolean acknowledgesByHand,
    Optional<Presence> presence,
    int mostInFlight) {}
