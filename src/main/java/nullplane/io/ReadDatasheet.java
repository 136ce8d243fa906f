package nullplane.io;

import nullplane.driver.Datasheet;

/**
 * One woofer's data and the file it came from. The data need not suffice for a woofer.
 *
 * @param sheet the data, completed and checked
 * @param digest SHA-256 of the file's bytes, 64 hexadecimal digits
 * @param fileName the file as the user named it
 */
public record ReadDatasheet(Datasheet sheet, String digest, String fileName) {}
