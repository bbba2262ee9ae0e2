/** What the commands say to a person at the terminal. */
@NullMarked
package org.restpoint.acquisition.command;

import org.jspecify.annotations.NullMarked;
