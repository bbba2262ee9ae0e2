/** The running service: links hand over to one engine, which journals first and publishes after. */
@NullMarked
package org.restpoint.acquisition.service;

import org.jspecify.annotations.NullMarked;
