/** Guesses how an unknown device writes its lines, from a sample of what it sends. */
@NullMarked
package org.restpoint.adapters.guess;

import org.jspecify.annotations.NullMarked;
