/** How low and how far an electrode can be trusted: detection limits and the linear range. */
@NullMarked
package org.restpoint.stability.detection;

import org.jspecify.annotations.NullMarked;
