/** The runnable file as its users run it: real terminals, real brokers, real processes. */
@NullMarked
package org.restpoint.acquisition.endtoend;

import org.jspecify.annotations.NullMarked;
