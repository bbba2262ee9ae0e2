/** The recordings under stability/examples, made from first principles. */
@NullMarked
package org.restpoint.acquisition.example;

import org.jspecify.annotations.NullMarked;
