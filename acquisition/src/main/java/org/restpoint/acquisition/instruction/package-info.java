/** What a person or a rig tells the service to do. */
@NullMarked
package org.restpoint.acquisition.instruction;

import org.jspecify.annotations.NullMarked;
