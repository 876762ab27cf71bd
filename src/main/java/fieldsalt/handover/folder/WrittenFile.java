package fieldsalt.handover.folder;

/**
 * A file that was written.
 *
 * @param name in the output folder
 * @param what it holds, for people
 */
public record WrittenFile(String name, String what) {}
