/** How fast the science is. */
@NullMarked
package org.restpoint.stability.benchmark;

import org.jspecify.annotations.NullMarked;
