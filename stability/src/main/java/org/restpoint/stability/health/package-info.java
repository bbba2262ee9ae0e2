/** An electrode against its own history: base, jumps, trends and when they will reach a limit. */
@NullMarked
package org.restpoint.stability.health;

import org.jspecify.annotations.NullMarked;
