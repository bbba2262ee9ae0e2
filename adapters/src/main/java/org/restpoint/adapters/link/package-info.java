/** The port every link keeps: start, check, counts, close; and what it reports to. */
@NullMarked
package org.restpoint.adapters.link;

import org.jspecify.annotations.NullMarked;
