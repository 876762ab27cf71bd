package fieldsalt.cli;

/** Exit codes. */
final class Exit {
  static final int DONE = 0;
  static final int FAULT = 1;
  static final int USAGE = 2;
  static final int INPUT = 3;
  static final int SOME_FIELDS = 4;

  private Exit() {}
}
