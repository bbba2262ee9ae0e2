@NullMarked
package org.restpoint.acquisition.preparation;

import org.jspecify.annotations.NullMarked;
