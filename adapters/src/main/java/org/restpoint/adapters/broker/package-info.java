/** A small MQTT broker inside the service, for a bench that has none. */
@NullMarked
package org.restpoint.adapters.broker;

import org.jspecify.annotations.NullMarked;
