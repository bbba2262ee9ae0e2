/** What holds for the whole module, and the published values it is held to. */
@NullMarked
package org.restpoint.stability;

import org.jspecify.annotations.NullMarked;
