/** Primary pH buffers, whose value depends on temperature, and tables over temperature. */
@NullMarked
package org.restpoint.stability.buffer;

import org.jspecify.annotations.NullMarked;
