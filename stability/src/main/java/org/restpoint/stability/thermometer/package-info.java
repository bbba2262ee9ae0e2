/** Resistance thermometers: what a resistance says about a temperature, and how sure it is. */
@NullMarked
package org.restpoint.stability.thermometer;

import org.jspecify.annotations.NullMarked;
