/** Tests of checksums against published figures. */
@NullMarked
package org.restpoint.adapters.checksum;

import org.jspecify.annotations.NullMarked;
