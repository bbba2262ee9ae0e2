/** The journal: one SQLite file that keeps everything a station has seen, decided and owes. */
@NullMarked
package org.restpoint.adapters.journal;

import org.jspecify.annotations.NullMarked;
