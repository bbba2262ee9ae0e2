/** How soon and how rightly the rules of rest decide, on invented curves of known rest. */
@NullMarked
package org.restpoint.stability.settle1;

import org.jspecify.annotations.NullMarked;
