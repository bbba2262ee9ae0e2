/**
 * Modbus, as far as readings need it: registers are read, over a serial line (RTU) or TCP. Codec,
 * framing and conversation are apart; nothing is ever written to a device.
 */
@NullMarked
package org.restpoint.adapters.modbus;

import org.jspecify.annotations.NullMarked;
