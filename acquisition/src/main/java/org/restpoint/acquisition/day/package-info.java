/** What becomes of an electrode at the bench in the course of a day. */
@NullMarked
package org.restpoint.acquisition.day;

import org.jspecify.annotations.NullMarked;
