/** Reads a station file and tells everything that is wrong with it at once. */
@NullMarked
package org.restpoint.config.file;

import org.jspecify.annotations.NullMarked;
