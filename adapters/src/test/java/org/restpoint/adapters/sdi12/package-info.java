/** Tests of SDI-12 with sensors of our own making, which keep to the specification. */
@NullMarked
package org.restpoint.adapters.sdi12;

import org.jspecify.annotations.NullMarked;
