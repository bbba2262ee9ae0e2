/**
 * What the service says: results, calibrations, states, notices, progress; and how each is written
 * as JSON.
 */
@NullMarked
package org.restpoint.acquisition.event;

import org.jspecify.annotations.NullMarked;
