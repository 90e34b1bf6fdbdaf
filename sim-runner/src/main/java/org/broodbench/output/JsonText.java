package org.broodbench.output;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;

/** JSON in two-space indentation; a number that is not finite becomes null. */
final class JsonText {
  /** Something that writes itself. */
  interface Body {
    void write(JsonText json) throws IOException;
  }

  private final JsonGenerator generator;

  private JsonText(JsonGenerator generator) {
    this.generator = generator;
  }

  /** One object as text, ended by a line end. */
  static String object(Body body) {
    StringWriter text = new StringWriter();
    // the library's own shortest form of a double, which does not change with the Java version
    JsonFactory factory =
        JsonFactory.builder().enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER).build();
    DefaultIndenter indent = new DefaultIndenter("  ", "\n");
    try (JsonGenerator g = factory.createGenerator(text)) {
      g.setPrettyPrinter(
          new DefaultPrettyPrinter().withObjectIndenter(indent).withArrayIndenter(indent));
      g.writeStartObject();
      body.write(new JsonText(g));
      g.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text + "\n";
  }

  JsonText text(String key, String value) throws IOException {
    generator.writeStringField(key, value);
    return this;
  }

  JsonText number(String key, double value) throws IOException {
    if (Double.isFinite(value)) {
      generator.writeNumberField(key, value == 0 ? 0.0 : value); // no negative zero
    } else {
      generator.writeNullField(key);
    }
    return this;
  }

  JsonText whole(String key, long value) throws IOException {
    generator.writeNumberField(key, value);
    return this;
  }

  JsonText flag(String key, boolean value) throws IOException {
    generator.writeBooleanField(key, value);
    return this;
  }

  JsonText nothing(String key) throws IOException {
    generator.writeNullField(key);
    return this;
  }

  JsonText object(String key, Body body) throws IOException {
    generator.writeObjectFieldStart(key);
    body.write(this);
    generator.writeEndObject();
    return this;
  }

  JsonText texts(String key, List<String> values) throws IOException {
    generator.writeArrayFieldStart(key);
    for (String v : values) {
      generator.writeString(v);
    }
    generator.writeEndArray();
    return this;
  }

  JsonText objects(String key, List<? extends Body> bodies) throws IOException {
    generator.writeArrayFieldStart(key);
    for (Body b : bodies) {
      generator.writeStartObject();
      b.write(this);
      generator.writeEndObject();
    }
    generator.writeEndArray();
    return this;
  }
}
