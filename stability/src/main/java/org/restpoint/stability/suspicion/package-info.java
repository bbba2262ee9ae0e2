/** Whether a standard reads off, and why it most likely does. */
@NullMarked
package org.restpoint.stability.suspicion;

import org.jspecify.annotations.NullMarked;
