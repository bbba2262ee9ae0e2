/** What is typed at the terminal. */
@NullMarked
package org.restpoint.acquisition.command;

import org.jspecify.annotations.NullMarked;
