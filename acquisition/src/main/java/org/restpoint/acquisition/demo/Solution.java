package org.restpoint.acquisition.demo;

/**
 * A beaker on the simulated bench: what is really in it, which no electrode is told.
 *
 * @param name what stands on it
 * @param milligramsPerLitre nitrate as N that it really holds, mg/L
 * @param celsius its temperature, °C
 */
record Solution(String name, double milligramsPerLitre, double celsius) {}
