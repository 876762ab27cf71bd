package fieldsalt.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** What the page holds, read as text. */
class ReportTest {
  private final PageFixture fixture = new PageFixture();

  @Test
  void pageIsOneDocumentWithoutNetworkOrScript() throws IOException {
    String html = Report.html(fixture.input());
    Path kept = Files.createDirectories(Path.of("target/pages")).resolve("fixture.html");
    Files.writeString(kept, html, StandardCharsets.UTF_8);
    assertThat(html).startsWith("<!DOCTYPE html>").doesNotContain("<script").doesNotContain("http");
    assertThat(html.getBytes(StandardCharsets.UTF_8)).hasSizeLessThan(600_000);
  }
}
