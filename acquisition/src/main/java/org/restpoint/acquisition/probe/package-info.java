/**
 * One probe's routine at the bench or in the stream: pure, so that a replay does what the live run
 * did.
 */
@NullMarked
package org.restpoint.acquisition.probe;

import org.jspecify.annotations.NullMarked;
