package org.restpoint.adapters.modbus;

import java.util.Optional;

/** How requests and answers are wrapped on one kind of wire. */
interface Framing {

  /** A request to a unit, to be sent once. */
  Ask ask(int unit, ReadRequest request);

  /** One request on its way. */
  interface Ask {

    /** What is sent. */
    byte[] bytes();

    /** The answer, once it is whole among the bytes; whatever stands before it. */
    Optional<ReadRequest.Answer> answer(Heard heard);

    /** After a quiet moment: whether what came was an answer, and came to nothing. */
    boolean isBroken(Heard heard);

    /** What came instead, in words; empty where nothing did. */
    Optional<String> account(Heard heard);
  }
}
