/** The service. */
@NullMarked
package org.restpoint.acquisition;

import org.jspecify.annotations.NullMarked;
