package nullplane.io;

import java.io.IOException;
import nullplane.driver.RoundWireCoil;
import nullplane.motor.InductanceEstimate;
import nullplane.motor.MassBudget;
import nullplane.motor.MotorDesign;
import nullplane.motor.Ring;
import nullplane.motor.Winding;
import nullplane.scoring.Assessment;

/** The coil, the motor and the masses of a ranked woofer, as parts of a JSON document. */
final class MotorJson {
  private MotorJson() {}

  /** Writes the keys motor and masses; null where the coil is not known. */
  static void write(JsonText json, Assessment assessment) throws IOException {
    if (assessment.motor().isEmpty()) {
      json.none("motor");
      json.none("masses");
      return;
    }
    MotorDesign motor = assessment.motor().orElseThrow();
    MassBudget masses = assessment.masses().orElseThrow();
    json.object("motor", () -> motor(json, motor, assessment.woofer().inductanceH()));
    json.object(
        "masses",
        () -> {
          json.number("coneKg", masses.coneKg());
          json.number("surroundShareKg", masses.surroundKg());
          json.number("spiderShareKg", masses.spiderKg());
          json.number("formerKg", masses.formerKg());
          json.number("glueKg", masses.glueKg());
          json.number("coilKg", masses.coilKg());
          json.number("leastConeKg", masses.leastConeKg());
        });
  }

  private static void motor(JsonText json, MotorDesign motor, double inductanceH)
      throws IOException {
    Winding winding = motor.winding();
    RoundWireCoil coil = winding.coil();
    json.number("formerDiameterM", winding.former().insideDiameterM());
    json.number("formerWallM", winding.former().wallM());
    json.text("wire", coil.material().word());
    json.number("bareWireM", coil.bareDiameterM());
    json.number("insulatedWireM", coil.insulatedDiameterM());
    json.whole("layers", coil.layers());
    json.whole("turnsPerLayer", coil.turnsPerLayer());
    json.number("meanDiameterM", coil.meanDiameterM());
    json.number("wireLengthM", coil.wireLengthM());
    json.number("windingHeightM", coil.windingHeightM());
    json.number("gapHeightM", winding.gapHeightM());
    json.number("gapWidthM", winding.gapWidthM());
    json.number("gapVolumeM3", winding.gapVolumeM3());
    json.number("fluxT", motor.fluxT());
    json.number("poleDiameterM", winding.poleDiameterM());
    json.number("poleFluxT", motor.poleFluxT());
    json.number("backPlateM", motor.backPlateM());
    json.number("rearRoomM", motor.rearRoomM());
    json.text("magnet", motor.magnet().word());
    json.number("gapEnergyJ", motor.gapEnergyJ());
    json.number("magnetVolumeM3", motor.magnetVolumeM3());
    json.number("magnetMassKg", motor.magnetMassKg());
    json.number("plainInductanceH", InductanceEstimate.plainH(coil));
    json.number("ringInductanceH", InductanceEstimate.withRingH(coil));
    json.text("ring", Ring.neededFor(inductanceH, coil).words());
    json.texts("remarks", motor.remarks());
  }
}
