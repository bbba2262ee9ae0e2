/**
 * The main job on a simulated bench, told as it goes: the real service, and a made-up electrode.
 */
@NullMarked
package org.restpoint.acquisition.demo;

import org.jspecify.annotations.NullMarked;
