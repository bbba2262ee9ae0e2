/** What the journal keeps, written out for other programs. */
@NullMarked
package org.restpoint.acquisition.records;

import org.jspecify.annotations.NullMarked;
