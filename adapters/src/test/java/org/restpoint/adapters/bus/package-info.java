/** Probes that share a wire. */
@NullMarked
package org.restpoint.adapters.bus;

import org.jspecify.annotations.NullMarked;
