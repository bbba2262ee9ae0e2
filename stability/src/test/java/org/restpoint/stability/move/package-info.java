@NullMarked
package org.restpoint.stability.move;

import org.jspecify.annotations.NullMarked;
