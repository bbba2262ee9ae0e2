/** Listening to an unknown port or topic, and writing down how it can be read. */
@NullMarked
package org.restpoint.acquisition.listen;

import org.jspecify.annotations.NullMarked;
