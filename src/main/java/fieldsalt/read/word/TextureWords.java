package fieldsalt.read.word;

import fieldsalt.quantity.Texture;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Words for texture: USDA classes and their short forms, field grades, group words. */
public final class TextureWords {
  private static final Map<String, Texture> WORDS = new LinkedHashMap<>();

  static {
    put(Texture.SAND, "sand", "s", "sandy");
    put(Texture.LOAMY_SAND, "loamy sand", "ls", "clayey sand", "cs");
    put(Texture.SANDY_LOAM, "sandy loam", "sl", "light sandy clay loam");
    put(Texture.LOAM, "loam", "l", "loamy");
    put(Texture.SILT_LOAM, "silt loam", "sil", "silty loam");
    put(Texture.SILT, "silt", "si", "silty");
    put(Texture.SANDY_CLAY_LOAM, "sandy clay loam", "scl");
    put(Texture.CLAY_LOAM, "clay loam", "cl");
    put(Texture.SILTY_CLAY_LOAM, "silty clay loam", "sicl", "zcl");
    put(Texture.SANDY_CLAY, "sandy clay", "sc");
    put(Texture.SILTY_CLAY, "silty clay", "sic");
    put(Texture.CLAY, "clay", "c", "clayey");
    put(Texture.LIGHT_CLAY, "light clay", "lc", "light medium clay");
    put(Texture.MEDIUM_CLAY, "medium clay", "mc");
    put(Texture.HEAVY_CLAY, "heavy clay", "hc", "medium heavy clay");
    put(Texture.COARSE, "coarse", "moderately coarse", "light", "coarse textured", "very coarse");
    put(Texture.MEDIUM, "medium", "medium textured");
    put(Texture.FINE, "fine", "moderately fine", "heavy", "fine textured", "very fine");
    put(Texture.UNKNOWN, "unknown", "n/a", "na", "nd", "none", "not determined");
  }

  private TextureWords() {}

  private static void put(Texture texture, String... words) {
    for (String word : words) {
      WORDS.put(word, texture);
    }
  }

  /** The texture that a cell names; empty if we do not know the word. */
  public static Optional<Texture> of(String cell) {
    String plain =
        cell.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}/]+", " ").strip().replaceAll(" +", " ");
    Texture known = WORDS.get(plain);
    if (known == null) {
      known = WORDS.get(withoutGrain(plain));
    }
    return Optional.ofNullable(known);
  }

  private static String withoutGrain(String plain) {
    return plain
        .replaceAll(
            "\\b(very |extremely )?(gravelly|cobbly|stony|channery|calcareous|saline)\\b", "")
        .replaceAll("\\b(very )?(fine|coarse)(?= (sand|sandy|loamy sand))", "")
        .replaceAll(" +", " ")
        .strip();
  }

  /** Which of the schemes that must not be mixed a texture belongs to. */
  public static String scheme(Texture texture) {
    return switch (texture) {
      case LIGHT_CLAY, MEDIUM_CLAY, HEAVY_CLAY -> "field grades (light, medium, heavy clay)";
      case COARSE, MEDIUM, FINE -> "groups (coarse, medium, fine)";
      case UNKNOWN -> "";
      default -> "classes (sand ... clay)";
    };
  }
}
