/** What standards say of the chain from electrode to meter: reversed, dead, open, shorted. */
@NullMarked
package org.restpoint.stability.fault;

import org.jspecify.annotations.NullMarked;
