/** What other ions make an electrode read, by their selectivity coefficients. */
@NullMarked
package org.restpoint.stability.interference;

import org.jspecify.annotations.NullMarked;
