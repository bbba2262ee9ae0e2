/** Modbus against the frames of its specifications, and against devices that misbehave. */
@NullMarked
package org.restpoint.adapters.modbus;

import org.jspecify.annotations.NullMarked;
