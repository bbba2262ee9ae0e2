package org.restpoint.acquisition.replay;

import java.time.Instant;
import org.restpoint.acquisition.instruction.Instruction;

/**
 * An instruction and when it was given.
 *
 * @param time when
 * @param probe to whom
 * @param instruction what
 */
public record TimedInstruction(Instant time, String probe, Instruction instruction) {}
