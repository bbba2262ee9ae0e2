/** What of a sample stands in a journal, so that it can be taken out. */
@NullMarked
package org.restpoint.acquisition.forgetting;

import org.jspecify.annotations.NullMarked;
