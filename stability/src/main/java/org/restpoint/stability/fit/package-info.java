/** Straight lines by least squares, with their standard errors. */
@NullMarked
package org.restpoint.stability.fit;

import org.jspecify.annotations.NullMarked;
