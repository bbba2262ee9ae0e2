/**
 * Lines and curves by least squares with their uncertainties, and the distributions to judge them.
 */
@NullMarked
package org.restpoint.stability.fit;

import org.jspecify.annotations.NullMarked;
