package fieldsalt.surface.kernel;

/**
 * A fast way to predict many places from one field's data. A kernel is shared by all threads; each
 * thread has a solver of its own. What is predicted for a place may depend on the group that it is
 * in, never on the thread or on the groups before.
 */
interface PredictionKernel {
  /** Cells on a side of the square groups that suit this kernel. */
  int groupSide();

  Solver solver();

  /** The work space of one thread. */
  interface Solver {
    /**
     * Writes estimates and variances of the group's places, at most groupSide² of them (a shared
     * neighbourhood takes any number); may reorder the group and replace its coordinates.
     */
    void predict(KernelGroup group);
  }
}
