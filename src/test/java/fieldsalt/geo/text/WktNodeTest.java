package fieldsalt.geo.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.ParseException;
import org.junit.jupiter.api.Test;

class WktNodeTest {
  @Test
  void aNodeIsWrittenAsItWasRead() throws ParseException {
    String text = "PROJCS[\"a (b), \"\"c\"\"\",UNIT[\"m\",1.0],AXIS[\"x\",EAST]]";
    assertThat(WktNode.parse(" " + text.replace("[", " (").replace("]", ") ")).toString())
        .isEqualTo(text);
  }
}
