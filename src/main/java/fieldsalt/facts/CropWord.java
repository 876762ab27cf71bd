package fieldsalt.facts;

/** Whether a crop's name begins with a word (or words) of a table. */
final class CropWord {
  private CropWord() {}

  static boolean begins(String cropName, String words) {
    if (!cropName.startsWith(words)) {
      return false;
    }
    return cropName.length() == words.length()
        || !Character.isLetter(cropName.charAt(words.length()));
  }
}
