/** MQTT: messages out of the outbox, instructions and readings in; the one home of the client. */
@NullMarked
package org.restpoint.adapters.mqtt;

import org.jspecify.annotations.NullMarked;
