/** A simulated electrode: for trying a station out with nothing on the bench. */
@NullMarked
package org.restpoint.adapters.simulated;

import org.jspecify.annotations.NullMarked;
