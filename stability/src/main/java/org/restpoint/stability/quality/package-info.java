/** What check standards, blanks, duplicates and spikes say of the results beside them. */
@NullMarked
package org.restpoint.stability.quality;

import org.jspecify.annotations.NullMarked;
