package nullplane.io;

import nullplane.sample.SampleBrief;

/**
 * A brief as it was read from a file.
 *
 * @param brief the brief
 * @param digest SHA-256 of the file's bytes, hexadecimal
 * @param fileName the file as the user named it
 */
public record ReadBrief(SampleBrief brief, String digest, String fileName) {}
