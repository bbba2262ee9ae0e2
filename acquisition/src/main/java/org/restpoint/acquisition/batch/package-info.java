/** A list of cups on its way, cup by cup: pure, no clock and no thread. */
@NullMarked
package org.restpoint.acquisition.batch;

import org.jspecify.annotations.NullMarked;
