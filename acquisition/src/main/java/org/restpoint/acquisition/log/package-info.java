/** How the service's log is written: one line an event, for a person or for a machine. */
@NullMarked
package org.restpoint.acquisition.log;

import org.jspecify.annotations.NullMarked;
