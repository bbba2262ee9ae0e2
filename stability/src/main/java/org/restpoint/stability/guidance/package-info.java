/** What a number means by published tables, and when a table has nothing to say of it. */
@NullMarked
package org.restpoint.stability.guidance;

import org.jspecify.annotations.NullMarked;
