/** Ions, units of concentration and the basis a concentration is given on. */
@NullMarked
package org.restpoint.stability.chemistry;

import org.jspecify.annotations.NullMarked;
