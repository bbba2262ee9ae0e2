/**
 * What results mean by the tables that a station file chose. Nothing here has a clock, a thread or
 * a file.
 */
@NullMarked
package org.restpoint.acquisition.meaning;

import org.jspecify.annotations.NullMarked;
