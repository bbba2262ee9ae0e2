/** How a sample was made ready to be read: dilutions, adjustor, soil and extractant, and back. */
@NullMarked
package org.restpoint.stability.preparation;

import org.jspecify.annotations.NullMarked;
