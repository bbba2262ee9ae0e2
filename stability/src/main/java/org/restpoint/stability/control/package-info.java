/**
 * Whether a figure that is taken again and again stays as it was: individuals chart and run rules.
 */
@NullMarked
package org.restpoint.stability.control;

import org.jspecify.annotations.NullMarked;
