package fieldsalt.report.record;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import fieldsalt.surface.covariance.Variogram;
import fieldsalt.surface.fit.SurfaceMethod;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** The run record as JSON text: values by their words, null for what is not a number. */
final class RecordText {
  private static final JsonMapper MAPPER = mapper();

  private RecordText() {}

  static String of(Map<String, Object> record) {
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter()
            .withObjectIndenter(new DefaultIndenter("  ", "\n"))
            .withArrayIndenter(new DefaultIndenter("  ", "\n"));
    try {
      return new ObjectMapper().writer(printer).writeValueAsString(withoutNaN(record)) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private static JsonMapper mapper() {
    SimpleModule words = new SimpleModule();
    words.addSerializer(SurfaceMethod.class, new Named<>(SurfaceMethod::label));
    words.addSerializer(Variogram.class, new Named<>(Variogram::name));
    return JsonMapper.builder().addModule(words).build();
  }

  /** A value by its word. */
  private static final class Named<T> extends JsonSerializer<T> {
    private final Function<T, String> word;

    Named(Function<T, String> word) {
      this.word = word;
    }

    @Override
    public void serialize(T value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      out.writeString(word.apply(value));
    }
  }

  /** A copy as maps, lists, texts and numbers in which what is not a number is null. */
  private static Object withoutNaN(Object value) {
    return mended(MAPPER.convertValue(value, Object.class));
  }

  private static Object mended(Object value) {
    if (value instanceof Map<?, ?> map) {
      Map<Object, Object> copy = new LinkedHashMap<>();
      map.forEach((k, v) -> copy.put(k, mended(v)));
      return copy;
    }
    if (value instanceof List<?> list) {
      List<Object> copy = new ArrayList<>();
      list.forEach(v -> copy.add(mended(v)));
      return copy;
    }
    return value instanceof Double d && !Double.isFinite(d) ? null : value;
  }
}
