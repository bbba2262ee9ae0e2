/**
 * Sensors on an SDI-12 bus, asked over a serial converter that makes the bus's break and timing.
 *
 * <p>Sections and tables are those of SDI-12, A Serial-Digital Interface Standard for
 * Microprocessor-Based Sensors, version 1.4, SDI-12 Support Group, http://www.sdi-12.org.
 */
@NullMarked
package org.restpoint.adapters.sdi12;

import org.jspecify.annotations.NullMarked;
