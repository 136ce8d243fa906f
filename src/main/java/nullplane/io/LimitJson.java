package nullplane.io;

import java.io.IOException;
import java.util.OptionalDouble;
import nullplane.scoring.LimitStudy;

/** What holds a woofer back in one stack, as the fields of a JSON object in SI. */
final class LimitJson {
  private LimitJson() {}

  static void write(JsonText json, LimitStudy limits) throws IOException {
    json.object(
        "heat",
        () -> {
          json.number("limitRiseK", limits.limitRiseK());
          json.number("thermalResistanceKPerW", limits.thermalResistanceKPerW());
          json.object("cold", () -> state(json, limits.cold()));
          json.object("atRatedPower", () -> state(json, limits.rated()));
          json.curve("levelAtRatedPowerDb", limits.hotLevelDb());
        });
    json.object(
        "amplifier",
        () -> {
          LimitStudy.LoadMargin load = limits.load();
          json.number("leastLoadOhm", load.leastLoadOhm());
          json.number("lowestLoadOhm", load.lowestLoadOhm());
          json.number("loadShare", load.loadShare());
          json.number("directCurrentOhm", load.directCurrentOhm());
          json.number("highestRatedOhm", load.highestRatedOhm());
          optional(json, "ratedClassOhm", load.ratedClassOhm());
          json.number("peakCurrentA", load.peakCurrentA());
          json.number("voltageMarginDb", load.voltageMarginDb());
        });
    json.object(
        "subsonic",
        () -> {
          json.object("atFullVoltage", () -> demand(json, limits.fullVoltage()));
          json.object("atBandVoltage", () -> demand(json, limits.bandVoltage()));
        });
    json.objects("programmes", limits.programmes(), programme -> programme(json, programme));
    json.object(
        "travel",
        () -> {
          json.number("geometricM", limits.travel().geometricM());
          json.number("forceFactor82EstimateM", limits.travel().forceFactorM());
          json.none("compliance75M");
          json.none("distortion10M");
        });
  }

  private static void state(JsonText json, LimitStudy.HeatState state) throws IOException {
    json.number("heatW", state.heatW());
    json.number("riseK", state.riseK());
    json.number("reOhm", state.resistanceOhm());
    json.number("massControlledLossDb", state.levelLossDb());
    json.number("bandLossDb", state.bandLossDb());
    json.number("lowCornerLossDb", state.lowCornerLossDb());
    json.number("lowCornerGrowthDb", state.lowCornerGrowthDb());
    json.number("panelQes", state.panelElectricalQ());
    json.number("panelQts", state.panelTotalQ());
  }

  private static void demand(JsonText json, LimitStudy.SubsonicDemand demand) throws IOException {
    json.number("voltageV", demand.voltageV());
    json.flag("protectionNeeded", demand.protectionNeeded());
    optional(json, "beyondTravelBelowHz", demand.beyondTravelBelowHz());
    json.number("greatestTravelShare", demand.greatestShare());
    json.number("greatestHz", demand.greatestHz());
    optional(json, "highPassHz", demand.highPassHz());
    json.number("highPassLossAtLowCornerDb", demand.lowCornerLossDb());
  }

  private static void programme(JsonText json, LimitStudy.ProgrammeLevel programme)
      throws IOException {
    json.text("name", programme.name());
    json.number("crestFactor", programme.crestFactor());
    json.number("amplifierVoltageV", programme.amplifierVoltageV());
    json.number("excursionVoltageV", programme.excursionVoltageV());
    json.number("heatVoltageV", programme.heatVoltageV());
    json.text("binding", programme.binding().word());
    json.number("voltageV", programme.voltageV());
    json.number("wooferBandDb", programme.wooferBandDb());
    json.number("warmWooferBandDb", programme.warmWooferBandDb());
    json.number("wholeDb", programme.wholeDb());
    json.object("settled", () -> state(json, programme.settled()));
    json.object("atFullVoltage", () -> state(json, programme.atFullVoltage()));
    json.number("fullVoltageTravelShare", programme.excursionShare());
    optional(json, "highPassHz", programme.highPassHz());
  }

  private static void optional(JsonText json, String field, OptionalDouble value)
      throws IOException {
    if (value.isPresent()) {
      json.number(field, value.getAsDouble());
    } else {
      json.none(field);
    }
  }
}
