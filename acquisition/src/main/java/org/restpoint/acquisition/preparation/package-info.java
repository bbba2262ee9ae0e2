/**
 * Recipes: from what was read in the vessel to what a kilogram of soil or the water holds. Pure.
 */
@NullMarked
package org.restpoint.acquisition.preparation;

import org.jspecify.annotations.NullMarked;
