package nullplane.scoring;

import nullplane.acoustics.PanelResponse;

/**
 * A stack with its solved panel; point 0 of the response is the listening point.
 *
 * @param brief the stack
 * @param response its acoustics on the scoring axis
 */
public record StackAcoustics(StackBrief brief, PanelResponse response) {}
