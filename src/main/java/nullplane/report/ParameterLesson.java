package nullplane.report;

import nullplane.judging.ParameterGroup;

/** What each parameter does on a panel, for a student, in a sentence or two. */
final class ParameterLesson {
  private ParameterLesson() {}

  static String of(ParameterGroup group) {
    return switch (group) {
      case RESONANCE ->
          "Below its resonance a cone loses 12 dB an octave, on top of the 6 dB that the open back"
              + " takes. A lower resonance moves that slope out of the band.";
      case ELECTRICAL_Q ->
          "A weak motor brakes little: a high Qes leaves more level at the resonance, where a bare"
              + " panel has too little, and less above it.";
      case MECHANICAL_Q ->
          "Loss in the suspension brakes beside the motor. It matters where the motor is weak, since"
              + " the smaller of the two Q factors rules.";
      case MOVING_MASS ->
          "At equal resonance and Q a heavier cone needs a stiffer suspension and a stronger motor,"
              + " and the level falls by ten times the logarithm of the mass ratio.";
      case AREA ->
          "More area moves more air for the same travel, and its air load lowers the resonance on the"
              + " panel.";
      case TRAVEL ->
          "Travel has no part in the response at low level. It is what the loudest level in the bass"
              + " is made of: twice the travel, 6 dB.";
      case INDUCTANCE ->
          "Inductance takes level away towards the upper corner. On a bare panel, whose level rises"
              + " with frequency, some of it is welcome.";
      case RESISTANCE ->
          "At equal Q a coil of less resistance draws more current from the same voltage: the level"
              + " rises, and the load on the amplifier grows.";
      case POWER ->
          "Rated power has no part in the response. It is how much heat the coil stands before the"
              + " level must stop.";
    };
  }
}
