package fieldsalt.read.job;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fieldsalt.read.job.JobKeys.Branch;

/** The JSON Schema (draft 2020-12) of the job file, for editors; from the catalogue of keys. */
public final class JobSchema {
  private static final ObjectMapper JSON = new ObjectMapper();

  private JobSchema() {}

  /** The schema as JSON text with a line end at its end. */
  public static String text() {
    ObjectNode schema = JSON.createObjectNode();
    schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    schema.put("title", "fieldsalt job");
    schema.setAll(object(JobKeys.root()));
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
    try {
      return JSON.writer(printer).writeValueAsString(schema) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private static ObjectNode object(Branch branch) {
    ObjectNode node = JSON.createObjectNode();
    node.putArray("type").add("object").add("null");
    ObjectNode properties = JSON.createObjectNode();
    branch.named().forEach((name, below) -> properties.set(name, any(below)));
    if (!properties.isEmpty()) {
      node.set("properties", properties);
    }
    if (branch.free().isEmpty()) {
      node.put("additionalProperties", false);
    }
    branch.free().values().forEach(below -> node.set("additionalProperties", any(below)));
    return node;
  }

  private static ObjectNode any(Branch branch) {
    if (!branch.hasChildren()) {
      return leaf(branch.key().orElseThrow());
    }
    if (branch.key().isEmpty()) {
      return object(branch);
    }
    ObjectNode both = JSON.createObjectNode();
    ArrayNode choices = both.putArray("anyOf");
    choices.add(leaf(branch.key().get())).add(object(branch));
    return both;
  }

  private static ObjectNode leaf(JobKey key) {
    try {
      ObjectNode node = JSON.createObjectNode();
      String unit = key.unit().isEmpty() ? "" : " [" + key.unit() + "]";
      String fallback = key.fallback().isEmpty() ? "" : "; default " + key.fallback();
      node.put("description", key.doc() + unit + fallback);
      JsonNode type = JSON.readTree(key.type().schema());
      ArrayNode choices = node.putArray("anyOf");
      choices.add(type).add(JSON.createObjectNode().put("type", "null"));
      return node;
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
