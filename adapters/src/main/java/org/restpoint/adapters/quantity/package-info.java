/** What the numbers of a device mean: potentials and temperatures in the units it sends them in. */
@NullMarked
package org.restpoint.adapters.quantity;

import org.jspecify.annotations.NullMarked;
