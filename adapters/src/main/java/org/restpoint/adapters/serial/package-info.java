/** Readings as lines from a serial port, through jSerialComm, which is used nowhere else. */
@NullMarked
package org.restpoint.adapters.serial;

import org.jspecify.annotations.NullMarked;
