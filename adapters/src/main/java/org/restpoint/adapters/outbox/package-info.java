/** Messages that must leave in order and are kept until a broker has acknowledged them. */
@NullMarked
package org.restpoint.adapters.outbox;

import org.jspecify.annotations.NullMarked;
