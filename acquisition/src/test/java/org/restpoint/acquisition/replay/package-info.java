/** Recordings through the routines. */
@NullMarked
package org.restpoint.acquisition.replay;

import org.jspecify.annotations.NullMarked;
