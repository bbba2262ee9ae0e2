/** One wire that several probes share: each is asked in its turn, on one thread. */
@NullMarked
package org.restpoint.adapters.bus;

import org.jspecify.annotations.NullMarked;
