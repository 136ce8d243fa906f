package nullplane.io;

import nullplane.driver.Woofer;

/**
 * A woofer and the file it came from.
 *
 * @param woofer the woofer
 * @param digest SHA-256 of the file's bytes, 64 hexadecimal digits
 * @param fileName the file as the user named it
 */
public record ReadWoofer(Woofer woofer, String digest, String fileName) {}
