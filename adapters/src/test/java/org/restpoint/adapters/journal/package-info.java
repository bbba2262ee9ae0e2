/** Tests of the journal on real files. */
@NullMarked
package org.restpoint.adapters.journal;

import org.jspecify.annotations.NullMarked;
