/** A recording and its instructions through the same routines that run live. */
@NullMarked
package org.restpoint.acquisition.replay;

import org.jspecify.annotations.NullMarked;
