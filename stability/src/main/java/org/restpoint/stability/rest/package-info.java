/** When a potential has come to rest, and how well it is known then. */
@NullMarked
package org.restpoint.stability.rest;

import org.jspecify.annotations.NullMarked;
