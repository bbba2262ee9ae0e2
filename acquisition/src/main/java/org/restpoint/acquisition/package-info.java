/** The program. */
@NullMarked
package org.restpoint.acquisition;

import org.jspecify.annotations.NullMarked;
