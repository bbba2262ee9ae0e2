/** The journal written out. */
@NullMarked
package org.restpoint.acquisition.records;

import org.jspecify.annotations.NullMarked;
