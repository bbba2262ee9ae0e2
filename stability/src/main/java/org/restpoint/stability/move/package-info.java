/** When an electrode has been taken from one solution to another, seen in its potential alone. */
@NullMarked
package org.restpoint.stability.move;

import org.jspecify.annotations.NullMarked;
