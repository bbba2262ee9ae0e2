package org.restpoint.adapters.recording;

/** What one row of a recording came to. */
sealed interface Row permits ProbeReading, SkippedLine, HeaderRow {}
