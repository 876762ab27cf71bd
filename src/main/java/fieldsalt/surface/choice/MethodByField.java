package fieldsalt.surface.choice;

import java.util.List;
import java.util.Set;

/**
 * The method of each field: one for all, or one for the fields that a drift steers and one for the
 * others.
 */
public record MethodByField(List<Group> groups) {
  public MethodByField {
    groups = List.copyOf(groups);
  }

  /** Fields with their method. */
  public record Group(Set<String> fields, Tried method) {
    public Group {
      fields = Set.copyOf(fields);
    }
  }

  /** Position of a field's group. */
  public int groupOf(String field) {
    for (int g = 0; g < groups.size(); g++) {
      if (groups.get(g).fields().contains(field)) {
        return g;
      }
    }
    throw new IllegalArgumentException("no surface in field " + field);
  }

  /** The method of a field. */
  public Tried of(String field) {
    return groups.get(groupOf(field)).method();
  }

  /** Whether any field follows a survey or raster. */
  public boolean hasDrift() {
    return groups.stream().anyMatch(g -> !g.method().data().drifts().isEmpty());
  }
}
