/** Checksums by which a device's line or frame is known to have come whole. */
@NullMarked
package org.restpoint.adapters.checksum;

import org.jspecify.annotations.NullMarked;
