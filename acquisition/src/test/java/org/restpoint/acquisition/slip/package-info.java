@NullMarked
package org.restpoint.acquisition.slip;

import org.jspecify.annotations.NullMarked;
