package dev.loopgauge.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A back end that opens the sessions it was given, one after another. */
public final class ScriptedBackend implements AudioBackend {
  private final String name;
  private final Availability seen;
  private final List<AudioSession> sessions;
  private final List<SessionRequest> requests = new ArrayList<>();
  private Optional<String> alone = Optional.empty();
  private List<AudioDevice> countable = List.of();
  private final List<String> counted = new ArrayList<>();

  /** A back end with sessions to open, in order. */
  public ScriptedBackend(String name, Availability seen, AudioSession... sessions) {
    this.name = name;
    this.seen = seen;
    this.sessions = List.of(sessions);
  }

  /** The same where opening takes a device from other programs. */
  public ScriptedBackend taking(String device) {
    alone = Optional.of(device);
    return this;
  }

  /** The same where devices that are listed uncounted turn out to be these. */
  public ScriptedBackend countable(AudioDevice... devices) {
    countable = List.of(devices);
    return this;
  }

  /** The devices that were opened to count their channels so far. */
  public List<String> counted() {
    return List.copyOf(counted);
  }

  /** What was asked to be opened so far. */
  public List<SessionRequest> requests() {
    return List.copyOf(requests);
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public Availability look() {
    return seen;
  }

  @Override
  public AudioDevice counted(AudioDevice device) throws CaptureException {
    if (device.channels().isPresent()) {
      return device;
    }
    counted.add(device.name());
    return countable.stream()
        .filter(known -> known.name().equals(device.name()))
        .findFirst()
        .orElseThrow(
            () ->
                new CaptureException(
                    CaptureException.Kind.BUSY, "scripted: it is busy", "try again"));
  }

  @Override
  public boolean hasGraph() {
    return sessions.stream().anyMatch(GraphSession.class::isInstance);
  }

  @Override
  public Optional<String> takenAlone(SessionRequest request) {
    return alone;
  }

  @Override
  public AudioSession open(SessionRequest request) throws CaptureException {
    requests.add(request);
    if (requests.size() > sessions.size()) {
      throw new CaptureException(
          CaptureException.Kind.NO_SUCH_DEVICE, "scripted: no such device", "try another");
    }
    return sessions.get(requests.size() - 1);
  }
}
