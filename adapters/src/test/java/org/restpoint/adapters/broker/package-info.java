/** Real brokers for tests: a Mosquitto process, and the broker inside the service. */
@NullMarked
package org.restpoint.adapters.broker;

import org.jspecify.annotations.NullMarked;
