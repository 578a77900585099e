package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Shown;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.parser.Parser;

/**
 * Passes YAML on while it is no deeper than a chain file can be and writes every value out. So no
 * tree ever grows from a few lines that repeat one another, and none is too deep to be walked.
 */
final class FlatParser implements Parser {
  /** The deepest nesting of a chain file is four: the list of stages of one of the paths. */
  private static final int DEEPEST = 4;

  private final Parser inner;
  private final String file;
  private int depth;

  FlatParser(Parser inner, String file) {
    this.inner = inner;
    this.file = file;
  }

  @Override
  public boolean hasNext() {
    return inner.hasNext();
  }

  @Override
  public boolean checkEvent(Event.ID choice) {
    return inner.checkEvent(choice);
  }

  @Override
  public Event peekEvent() {
    return inner.peekEvent();
  }

  @Override
  public Event next() {
    Event event = inner.next();
    switch (event.getEventId()) {
      case MappingStart, SequenceStart -> enter(event);
      case MappingEnd, SequenceEnd -> depth--;
      case Alias ->
          throw refuse(
              event,
              "a value written out",
              "the alias '*" + Shown.plain(((AliasEvent) event).getAlias().getValue()) + "'",
              "write the value itself here; chain files have no aliases");
      default -> {}
    }
    return event;
  }

  private void enter(Event event) {
    depth++;
    if (depth > DEEPEST) {
      throw refuse(
          event,
          "at most " + DEEPEST + " levels",
          "a deeper one",
          "check the indentation and the brackets");
    }
  }

  private Refusal refuse(Event event, String expected, String found, String hint) {
    return new Refusal(new ChainFormatException(file, event.getStartMark(), expected, found, hint));
  }

  /** Carries a refusal out of the composer, which lets no checked exception through. */
  static final class Refusal extends YamlEngineException {
    private static final long serialVersionUID = 1L;

    private final ChainFormatException refused;

    Refusal(ChainFormatException refused) {
      super(refused);
      this.refused = refused;
    }

    ChainFormatException refused() {
      return refused;
    }
  }
}
