/** Tests of the demo. */
@NullMarked
package org.restpoint.acquisition.demo;

import org.jspecify.annotations.NullMarked;
