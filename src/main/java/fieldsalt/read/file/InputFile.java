package fieldsalt.read.file;

import fieldsalt.finding.InputProblem;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;

/** The bytes of one input file. */
public record InputFile(Path path, String name, byte[] bytes) {
  private static final int MOST_BYTES = 1 << 30;

  /** Reads it whole; a file that is not there, empty, a folder or unreadable is a problem. */
  public static InputFile read(Path path) {
    String name = String.valueOf(path.getFileName());
    if (!Files.exists(path)) {
      throw new InputProblem(
          name,
          "no such file (" + path + ")",
          "a file",
          "Check its name; paths are relative to the job file.");
    }
    if (Files.isDirectory(path)) {
      throw new InputProblem(name, "a folder (" + path + ")", "a file", "Name the file inside it.");
    }
    try (InputStream in = Files.newInputStream(path)) {
      return new InputFile(path, name, in.readNBytes(MOST_BYTES + 1)).checked();
    } catch (IOException e) {
      boolean denied = e instanceof AccessDeniedException;
      throw new InputProblem(
              name,
              (denied ? "a file that you are not allowed to read (" : "an unreadable file (")
                  + path
                  + ")",
              "a readable file",
              denied ? "Change its permissions." : "Copy it to this machine's disk and try again.")
          .because(e);
    }
  }

  private InputFile checked() {
    if (bytes.length > MOST_BYTES) {
      throw new InputProblem(
          name, "more than 1 GB", "a table or boundaries of this ranch", "Cut it to the ranch.");
    }
    if (bytes.length == 0) {
      throw new InputProblem(name, "an empty file (0 bytes)", "data", "Export it again.");
    }
    return this;
  }

  /** SHA-256 of the bytes in hexadecimal. */
  public String sha256() {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The part of the name after the last dot, lower case, or empty text. */
  public String extension() {
    int dot = name.lastIndexOf('.');
    return dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
  }

  /** Whether the file begins with these bytes. */
  public boolean startsWith(int... wanted) {
    if (bytes.length < wanted.length) {
      return false;
    }
    for (int i = 0; i < wanted.length; i++) {
      if ((bytes[i] & 0xff) != wanted[i]) {
        return false;
      }
    }
    return true;
  }
}
