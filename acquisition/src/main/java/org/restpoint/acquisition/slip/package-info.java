/** A result as a slip to hand over: for a grower to read, on paper or on a screen. */
@NullMarked
package org.restpoint.acquisition.slip;

import org.jspecify.annotations.NullMarked;
