/** Uncertainty by the law of propagation: inputs, a measurement model, and the budget they make. */
@NullMarked
package org.restpoint.stability.uncertainty;

import org.jspecify.annotations.NullMarked;
