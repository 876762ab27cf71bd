package fieldsalt.report.markup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class MarkupTest {
  @Test
  void whatPeopleWriteIsEscaped() {
    String page =
        new Markup()
            .line("p", "<script>alert('1')</script> & \"so\"", "title", "\"><img onerror=x>")
            .toString();
    assertThat(page)
        .isEqualTo(
            "<p title=\"&quot;&gt;&lt;img onerror=x&gt;\">&lt;script&gt;alert(&#39;1&#39;)"
                + "&lt;/script&gt; &amp; &quot;so&quot;</p>\n");
  }

  @Test
  void controlsAndHalvesOfCharactersAreReplaced() {
    assertThat(Markup.escaped("a\u0000b\u0085c\uD83Dd")).isEqualTo("a\uFFFDb\uFFFDc\uFFFDd");
    assertThat(Markup.escaped("\uD83C\uDF3E Ñandú \u05D0")).isEqualTo("\uD83C\uDF3E Ñandú \u05D0");
  }

  @Test
  void namesKeepTheirDirectionToThemselves() {
    assertThat(new Markup().textWithName("Zone %s of 3", "\u202Enorth").toString())
        .isEqualTo("Zone <bdi>\u202Enorth</bdi> of 3");
  }

  @Test
  void elementsNestAndClose() {
    Markup m = new Markup();
    m.in("ul", () -> m.line("li", "one").empty("br"), "class", "x");
    assertThat(m.toString()).isEqualTo("<ul class=\"x\"><li>one</li>\n<br/></ul>\n");
    assertThatThrownBy(() -> m.empty("br", "alone")).isInstanceOf(IllegalArgumentException.class);
  }
}
