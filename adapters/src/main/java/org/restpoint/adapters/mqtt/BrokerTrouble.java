package org.restpoint.adapters.mqtt;

/**
 * What is wrong between the service and its broker, for a person.
 *
 * @param code stable, lower case with hyphens: {@code broker-refused}, {@code broker-unknown-host},
 *     {@code broker-unreachable}, {@code broker-timeout}, {@code broker-not-authorised}, {@code
 *     broker-not-mqtt}, {@code broker-lost}, {@code broker-frozen}, {@code broker-flooded}, {@code
 *     password-unreadable}, {@code outbox-failed}, {@code instruction-not-stored}, {@code
 *     instruction-too-long}
 * @param text what happened and where, one sentence
 * @param remedy what to do about it, one sentence
 */
public record BrokerTrouble(String code, String text, String remedy) {}
