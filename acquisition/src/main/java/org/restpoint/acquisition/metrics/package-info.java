/** What the service counts and how it is, served over HTTP on loopback. */
@NullMarked
package org.restpoint.acquisition.metrics;

import org.jspecify.annotations.NullMarked;
