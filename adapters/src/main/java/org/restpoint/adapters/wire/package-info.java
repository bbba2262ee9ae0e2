/** Bytes to and from one device that is asked and answers: what buses are spoken over. */
@NullMarked
package org.restpoint.adapters.wire;

import org.jspecify.annotations.NullMarked;
