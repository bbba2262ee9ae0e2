/** Where a potential is going: fits of response curves, their weights, and what they foretell. */
@NullMarked
package org.restpoint.stability.rest.forecast;

import org.jspecify.annotations.NullMarked;
