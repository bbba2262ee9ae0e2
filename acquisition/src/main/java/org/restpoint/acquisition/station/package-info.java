/**
 * All probes of a station together, and the temperatures they lend each other: pure like the
 * probes.
 */
@NullMarked
package org.restpoint.acquisition.station;

import org.jspecify.annotations.NullMarked;
