/**
 * Records what reference tests compare and holds the page of comparisons to it. Test code only; may
 * depend on nothing of the program.
 */
package nullplane.validation;
