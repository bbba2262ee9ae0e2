/** The Nernst equation: ideal slopes and the exact constants behind them. */
@NullMarked
package org.restpoint.stability.electrode;

import org.jspecify.annotations.NullMarked;
