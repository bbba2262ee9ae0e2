/**
 * Checks of results as they are made: how each is judged, when one is due, and which results are
 * doubted when one fails. Pure: no clock, thread or file.
 */
@NullMarked
package org.restpoint.acquisition.check;

import org.jspecify.annotations.NullMarked;
