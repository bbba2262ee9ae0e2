/** What a station is, as typed records: the meaning of a station file. */
@NullMarked
package org.restpoint.config.station;

import org.jspecify.annotations.NullMarked;
