package nullplane.io;

import nullplane.scoring.DesignSpec;

/**
 * A spec and the file it came from.
 *
 * @param spec the spec
 * @param digest SHA-256 of the file's bytes, 64 hexadecimal digits
 * @param fileName the file as the user named it
 */
public record ReadSpec(DesignSpec spec, String digest, String fileName) {}
