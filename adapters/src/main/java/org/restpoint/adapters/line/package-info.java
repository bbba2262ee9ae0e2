/** From bytes in any chunking to lines, and from a line to what it says: no port, no thread. */
@NullMarked
package org.restpoint.adapters.line;

import org.jspecify.annotations.NullMarked;
