/** A whole working day at the bench, live and replayed, against a table worked out by hand. */
@NullMarked
package org.restpoint.acquisition.workday;

import org.jspecify.annotations.NullMarked;
