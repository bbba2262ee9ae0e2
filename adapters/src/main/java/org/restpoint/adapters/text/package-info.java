/** Text from devices, whatever it came over: numbers read from it, and pieces of it shown. */
@NullMarked
package org.restpoint.adapters.text;

import org.jspecify.annotations.NullMarked;
