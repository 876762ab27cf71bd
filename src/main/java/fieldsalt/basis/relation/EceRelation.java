package fieldsalt.basis.relation;

import fieldsalt.read.sample.Soil;

/**
 * One relation between an EC by some method and the EC of the saturated-paste extract, ECe. Both in
 * dS/m at 25 °C. One published relation is one class, named for its authors and year.
 */
public interface EceRelation {
  /** The name by which a job file asks for it. */
  String name();

  /** Authors, year, place of publication. */
  String citation();

  /**
   * How sure we are of its digits: S seen in print, S2 seen second-hand, M+ from memory but checked
   * by arithmetic, M from memory, D derived, CP common practice, or {@code own}.
   */
  String confidence();

  /** The soils and region it holds for, in plain words. */
  String domain();

  /** A region outside which it must not be used without saying so; empty text if none. */
  default String region() {
    return "";
  }

  /** Whether it is made for readings of this kind. */
  boolean takes(MethodKey method);

  /**
   * The ECe of one reading, or why not.
   *
   * @param ecDsM EC by one of the relation's methods, dS/m at 25 °C, greater than 0
   * @param soil of the same row; the relation refuses if it lacks what the relation needs
   */
  Outcome convert(double ecDsM, Soil soil);
}
