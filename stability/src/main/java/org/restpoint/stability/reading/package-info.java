/** What an electrode sends: a raw potential and a temperature at an instant. */
@NullMarked
package org.restpoint.stability.reading;

import org.jspecify.annotations.NullMarked;
