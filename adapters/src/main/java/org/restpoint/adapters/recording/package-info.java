/** Recordings: readings in a CSV file, read, written and played. */
@NullMarked
package org.restpoint.adapters.recording;

import org.jspecify.annotations.NullMarked;
