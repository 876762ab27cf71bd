package fieldsalt.finding;

import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/** What a finding is about, as a value; its words are made by {@link PlaceWords}. */
public sealed interface Place {

  /** Whether it is about a field, as far as the place knows its fields. */
  boolean concerns(String field);

  /** Whether it lies in a file. */
  default boolean isIn(String file) {
    return (this instanceof Rows rows && rows.file().equals(file))
        || (this instanceof Column column && column.file().equals(file))
        || (this instanceof InFile in && in.file().equals(file))
        || (this instanceof Laboratory laboratory && laboratory.file().equals(file));
  }

  /**
   * Rows of a file.
   *
   * @param word {@code row} or {@code feature}
   * @param rows as a spreadsheet numbers them, at least one
   * @param site whose rows they are; empty where that is not known or there are several
   * @param fields in which they lie; empty before rows are given to fields
   */
  record Rows(String file, String word, SortedSet<Integer> rows, String site, Set<String> fields)
      implements Place {
    public Rows {
      rows = new TreeSet<>(rows);
      fields = Set.copyOf(fields);
    }

    @Override
    public boolean concerns(String field) {
      return fields.contains(field);
    }
  }

  /** A column of a table, by its header. */
  record Column(String file, String header) implements Place {
    @Override
    public boolean concerns(String field) {
      return false;
    }
  }

  /**
   * A file, or a part of it.
   *
   * @param part such as {@code name of the field}; may be empty
   */
  record InFile(String file, String part) implements Place {
    @Override
    public boolean concerns(String field) {
      return false;
    }
  }

  /**
   * Readings of a laboratory.
   *
   * @param file they stand in first; empty where it does not matter
   * @param name in its one spelling; may be empty
   * @param method of the readings; may be empty
   * @param fields in which they lie
   */
  record Laboratory(String file, String name, String method, Set<String> fields) implements Place {
    public Laboratory {
      fields = Set.copyOf(fields);
    }

    @Override
    public boolean concerns(String field) {
      return fields.contains(field);
    }
  }

  /** A site, or a composite sample. */
  record Site(String id, String field, boolean composite) implements Place {
    @Override
    public boolean concerns(String other) {
      return field.equals(other);
    }
  }

  /**
   * Fields.
   *
   * @param names at least one
   * @param part of it, such as {@code crop}; may be empty
   */
  record Fields(List<String> names, String part) implements Place {
    public Fields {
      names = List.copyOf(names);
    }

    @Override
    public boolean concerns(String field) {
      return names.contains(field);
    }
  }

  /** The whole ranch. */
  record Ranch() implements Place {
    @Override
    public boolean concerns(String field) {
      return true;
    }
  }

  /**
   * Readings of a kind over the ranch, a survey, or a raster.
   *
   * @param name such as {@code 1:5} or {@code ECa survey}
   */
  record Source(String name) implements Place {
    @Override
    public boolean concerns(String field) {
      return false;
    }
  }

  /** A key of the job. */
  record Key(String key) implements Place {
    @Override
    public boolean concerns(String field) {
      return false;
    }
  }

  /** A place in the surface of another property than the one mapped. */
  record OfProperty(String property, Place place) implements Place {
    @Override
    public boolean concerns(String field) {
      return place.concerns(field);
    }
  }

  /** A file as a whole. */
  static Place file(String file) {
    return new InFile(file, "");
  }

  /** One field. */
  static Place field(String name) {
    return new Fields(List.of(name), "");
  }

  /** A laboratory's readings by one method. */
  static Place laboratory(String name, String method, Collection<String> fields) {
    return new Laboratory("", name, method, Set.copyOf(fields));
  }
}
