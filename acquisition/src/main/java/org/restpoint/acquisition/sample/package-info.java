/** The record of a sample: what is known of it, read, checked, merged and put on results. */
@NullMarked
package org.restpoint.acquisition.sample;

import org.jspecify.annotations.NullMarked;
