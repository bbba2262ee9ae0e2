/** Connections to devices, real ones. */
@NullMarked
package org.restpoint.adapters.wire;

import org.jspecify.annotations.NullMarked;
