/** The published schemas against what the service really says and takes. */
@NullMarked
package org.restpoint.acquisition.schema;

import org.jspecify.annotations.NullMarked;
