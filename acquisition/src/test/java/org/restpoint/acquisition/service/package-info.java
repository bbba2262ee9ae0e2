/** The engine and what stands around it, with a real journal. */
@NullMarked
package org.restpoint.acquisition.service;

import org.jspecify.annotations.NullMarked;
