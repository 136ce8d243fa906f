package nullplane.io;

import java.time.LocalDate;
import java.util.Optional;
import nullplane.scoring.DesignSpec;

/**
 * A spec and the file it came from.
 *
 * @param spec the spec
 * @param digest SHA-256 of the file's bytes, 64 hexadecimal digits
 * @param fileName the file as the user named it
 * @param date the date that the spec bears, if it does
 */
public record ReadSpec(DesignSpec spec, String digest, String fileName, Optional<LocalDate> date) {}
