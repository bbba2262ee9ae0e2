/**
 * The port every link keeps: start, check, counts, close; whom it reports to; and the parts that
 * links are made of: their state, their thread and the handing over of readings.
 */
@NullMarked
package org.restpoint.adapters.link;

import org.jspecify.annotations.NullMarked;
