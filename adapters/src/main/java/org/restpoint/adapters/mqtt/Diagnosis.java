package org.restpoint.adapters.mqtt;

import java.io.EOFException;
import java.net.ConnectException;
import java.net.NoRouteToHostException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.time.Duration;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.jspecify.annotations.Nullable;

/** Puts what the client and the network report into words for a person. */
record Diagnosis(BrokerAddress address) {

  private static final String RETURNS_BY_ITSELF =
      "The service connects again by itself; if it does not, look at the broker's log.";

  /** Why an attempt to connect failed. */
  BrokerTrouble ofAttempt(Throwable thrown, Duration limit) {
    for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
      @Nullable BrokerTrouble known = known(cause, limit);
      if (known != null) {
        return known;
      }
    }
    return trouble(
        "broker-lost",
        "ended the connection before it was made (%s)".formatted(words(thrown)),
        "Check that an MQTT broker, and not another service, listens there.");
  }

  private @Nullable BrokerTrouble known(Throwable cause, Duration limit) {
    if (cause instanceof UnknownHostException) {
      return trouble(
          "broker-unknown-host",
          "cannot be found: the host %s is not known".formatted(address.url().getHost()),
          "Check the spelling of the host, and that this machine can look up names.");
    }
    if (cause instanceof SocketTimeoutException) {
      return noAnswer(limit);
    }
    if (cause instanceof NoRouteToHostException) {
      return unreachable(cause);
    }
    if (cause instanceof ConnectException) {
      return words(cause).contains("refused") ? nothingListens() : unreachable(cause);
    }
    if (cause instanceof EOFException) {
      return trouble(
          "broker-not-mqtt",
          "closed the connection without an answer",
          "Check that an MQTT broker, and not another service or a TLS port, listens there.");
    }
    return cause instanceof MqttException mqtt ? refusal(mqtt) : null;
  }

  private @Nullable BrokerTrouble refusal(MqttException refused) {
    return switch (refused.getReasonCode()) {
      case MqttException.REASON_CODE_FAILED_AUTHENTICATION,
          MqttException.REASON_CODE_NOT_AUTHORIZED ->
          address
              .user()
              .map(
                  user ->
                      trouble(
                          "broker-not-authorised",
                          "does not accept the user %s with this password".formatted(user),
                          "Check the user and the first line of the password file, and what the"
                              + " broker allows this user."))
              .orElseGet(
                  () ->
                      trouble(
                          "broker-not-authorised",
                          "accepts no client without a user and a password",
                          "Set the broker's user and password file, or let the broker accept"
                              + " anonymous clients."));
      case MqttException.REASON_CODE_BROKER_UNAVAILABLE ->
          trouble("broker-refused", "says that it is not available", "Look at the broker's log.");
      case MqttException.REASON_CODE_INVALID_CLIENT_ID ->
          trouble(
              "broker-refused",
              "does not accept the client's name",
              "Give the station a shorter name of letters, digits and hyphens.");
      case MqttException.REASON_CODE_INVALID_PROTOCOL_VERSION ->
          trouble(
              "broker-refused", "does not speak MQTT 3.1.1", "Let the broker accept MQTT 3.1.1.");
      default -> null;
    };
  }

  private BrokerTrouble nothingListens() {
    return trouble(
        "broker-refused",
        "refused the connection: nothing listens there",
        "Start the broker, or set broker: embedded.");
  }

  private BrokerTrouble unreachable(Throwable cause) {
    return trouble(
        "broker-unreachable",
        "cannot be reached (%s)".formatted(words(cause)),
        "Check this machine's network and the broker's address.");
  }

  /** An attempt that has taken too long. */
  BrokerTrouble noAnswer(Duration limit) {
    return trouble(
        "broker-timeout",
        "gave no answer within %s".formatted(seconds(limit)),
        "Check the host and the port, and a firewall between; restart a broker that hangs.");
  }

  /** A connection that stood and ended. */
  BrokerTrouble lost(@Nullable Throwable cause) {
    if (cause instanceof MqttException mqtt
        && (mqtt.getReasonCode() == MqttException.REASON_CODE_CLIENT_TIMEOUT
            || mqtt.getReasonCode() == MqttException.REASON_CODE_WRITE_TIMEOUT)) {
      return trouble("broker-frozen", "gives no sign of life", RETURNS_BY_ITSELF);
    }
    return trouble("broker-lost", "ended the connection", RETURNS_BY_ITSELF);
  }

  /** A broker that owes acknowledgements. */
  BrokerTrouble frozen(Duration silence) {
    return trouble(
        "broker-frozen",
        "has acknowledged nothing for %s".formatted(seconds(silence)),
        "The service connects again and sends again; restart a broker that stays so.");
  }

  /** A subscription that was refused. */
  BrokerTrouble subscriptionRefused(String topic) {
    return trouble(
        "broker-not-authorised",
        "refuses the subscription to %s".formatted(topic),
        "Let the broker allow this client to read the topic.");
  }

  /** More unacknowledged messages than are taken at once. */
  BrokerTrouble flooded(int limit) {
    return trouble(
        "broker-flooded",
        "sent more than %d messages at once; the others are fetched again".formatted(limit),
        "Send instructions more slowly.");
  }

  /** The password could not be read. */
  BrokerTrouble passwordUnreadable(RuntimeException cause) {
    return new BrokerTrouble(
        "password-unreadable",
        "the password for broker %s cannot be read (%s)".formatted(address.display(), words(cause)),
        "Check that the password file is there and that the service may read it.");
  }

  private BrokerTrouble trouble(String code, String what, String remedy) {
    return new BrokerTrouble(code, "broker " + address.display() + " " + what, remedy);
  }

  private static String words(Throwable thrown) {
    return thrown.getMessage() == null ? thrown.getClass().getSimpleName() : thrown.getMessage();
  }

  private static String seconds(Duration span) {
    return span.toMillis() % 1_000 == 0 ? span.toSeconds() + " s" : span.toMillis() + " ms";
  }
}
