/** Concentration from what a potential does when something known is added: once, or many times. */
@NullMarked
package org.restpoint.stability.addition;

import org.jspecify.annotations.NullMarked;
