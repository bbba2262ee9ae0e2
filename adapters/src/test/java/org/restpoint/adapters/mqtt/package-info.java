/** MQTT against real brokers. */
@NullMarked
package org.restpoint.adapters.mqtt;

import org.jspecify.annotations.NullMarked;
