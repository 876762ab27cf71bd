package fieldsalt.basis.depth;

/** How the layers of the root zone count in its mean. */
public enum Uptake {
  /** By thickness: what the crop tables rest on. */
  UNIFORM,
  /** 40, 30, 20 and 10 % from the upper to the lower quarter (Ayers &amp; Westcot 1985, FAO 29). */
  QUARTERS
}
