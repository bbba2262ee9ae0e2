/**
 * How much an ion acts like in a solution of many ions: ionic strength and activity coefficients.
 */
@NullMarked
package org.restpoint.stability.activity;

import org.jspecify.annotations.NullMarked;
