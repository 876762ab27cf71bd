package fieldsalt.basis.setting;

import fieldsalt.basis.relation.EceRelation;
import fieldsalt.basis.relation.MethodKey;
import fieldsalt.quantity.Method;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * What the job says about one laboratory.
 *
 * @param relations relation to use instead of the default multiplier, by method
 * @param sdLn total laboratory error of ln EC, instead of the default's; divided into shared and
 *     own as the default is
 * @param region {@code sulfate-prairie} or another name; empty text if none
 */
public record LaboratorySettings(
    Map<Method, EceRelation> relations, OptionalDouble sdLn, String region) {
  public static final String PRAIRIE = "sulfate-prairie";

  public LaboratorySettings {
    relations = Map.copyOf(relations);
  }

  public static LaboratorySettings defaults() {
    return new LaboratorySettings(Map.of(), OptionalDouble.empty(), "");
  }

  public LaboratorySettings withRelation(Method method, EceRelation relation) {
    Map<Method, EceRelation> more = new TreeMap<>(relations);
    more.put(method, relation);
    return new LaboratorySettings(more, sdLn, region);
  }

  public LaboratorySettings withSdLn(double total) {
    return new LaboratorySettings(relations, OptionalDouble.of(total), region);
  }

  public LaboratorySettings withRegion(String name) {
    return new LaboratorySettings(relations, sdLn, name);
  }

  public Optional<EceRelation> relation(MethodKey method) {
    return Optional.ofNullable(relations.get(method.method()));
  }

  public boolean isPrairie() {
    return region.equals(PRAIRIE);
  }
}
