/** From settled potentials of standards to a line, and from the line back to a concentration. */
@NullMarked
package org.restpoint.stability.calibration;

import org.jspecify.annotations.NullMarked;
