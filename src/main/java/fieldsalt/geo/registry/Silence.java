package fieldsalt.geo.registry;

import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Keeps the referencing library and the database inside it off standard error: what matters reaches
 * the user as a problem or a finding.
 */
final class Silence {
  // Held strongly: a logger that nobody holds forgets its level.
  private static final List<Logger> QUIET =
      List.of(
              "org.geotools",
              "org.hsqldb",
              "hsqldb",
              "hsqldb.db",
              "javax.media.jai",
              "java.util.prefs")
          .stream()
          .map(Logger::getLogger)
          .toList();

  private Silence() {}

  static void begin() {
    System.setProperty("hsqldb.reconfig_logging", "false");
    QUIET.forEach(logger -> logger.setLevel(Level.OFF));
  }
}
