package nullplane.sample;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import nullplane.driver.Woofer;
import nullplane.units.Air;

/**
 * The smallest change for a woofer that misses its brief, as far as the bench can tell: levers,
 * figures before and after, and what each lever does by itself. What it does on the panels is added
 * by {@link SampleJudge}.
 *
 * @param change the change asked for
 * @param expected what this maker is expected to make of it
 * @param rows one per lever moved
 * @param changed the woofer after what is expected
 * @param before figures of the brief before, by key (SI)
 * @param after the same after (SI)
 * @param stillOutside keys of the figures that stay outside their windows
 */
public record RequestPlan(
    Change change,
    Change expected,
    List<RequestRow> rows,
    Woofer changed,
    Map<String, Double> before,
    Map<String, Double> after,
    List<String> stillOutside) {
  private static final String REST = "rest-position";

  /** Copies the collections. */
  public RequestPlan {
    rows = List.copyOf(rows);
    before = Collections.unmodifiableMap(new LinkedHashMap<>(before));
    after = Collections.unmodifiableMap(new LinkedHashMap<>(after));
    stillOutside = List.copyOf(stillOutside);
  }

  /**
   * Finds the change for a maker who does what is asked.
   *
   * @param brief the brief
   * @param woofer the woofer as it is; its travel is that of the shorter side
   * @param uncertainty half width of each figure's 95 % interval (SI); 0 where there is none
   * @param restPositionM coil's rest position (m), if it was measured
   * @param locked levers that must not be moved
   * @param air the air
   * @param voltageV voltage of the level (V)
   */
  public static RequestPlan of(
      SampleBrief brief,
      Woofer woofer,
      Map<BenchFigure, Double> uncertainty,
      OptionalDouble restPositionM,
      Set<Lever> locked,
      Air air,
      double voltageV) {
    return of(
        brief, woofer, uncertainty, restPositionM, locked, MakerResponse.AS_ASKED, air, voltageV);
  }

  /**
   * Finds the change for a maker whose answer to requests is known.
   *
   * @param brief the brief
   * @param woofer the woofer as it is; its travel is that of the shorter side
   * @param uncertainty half width of each figure's 95 % interval (SI); 0 where there is none
   * @param restPositionM coil's rest position (m), if it was measured
   * @param locked levers that must not be moved
   * @param response how far the maker goes when a lever is to be moved
   * @param air the air
   * @param voltageV voltage of the level (V)
   */
  public static RequestPlan of(
      SampleBrief brief,
      Woofer woofer,
      Map<BenchFigure, Double> uncertainty,
      OptionalDouble restPositionM,
      Set<Lever> locked,
      MakerResponse response,
      Air air,
      double voltageV) {
    List<WindowAim> aims = WindowAim.of(brief, uncertainty);
    Change change = ChangeSearch.of(woofer, aims, brief.winding(), locked, response, air, voltageV);
    BriefWindow restWindow = brief.window(REST);
    if (restPositionM.isPresent()
        && !locked.contains(Lever.REST_POSITION)
        && !restWindow.accepts(restPositionM.getAsDouble())) {
      double rest = restPositionM.getAsDouble();
      double wanted =
          brief.value(REST).map(BriefValue::target).orElse(OptionalDouble.empty()).orElse(0);
      change =
          change.withRestMove(
              (wanted - rest) / response.used(Lever.REST_POSITION),
              // what the shorter side gains, up to what the brief's woofer has there
              Math.min(
                  Math.abs(rest) - Math.abs(wanted),
                  brief.woofer().travelM() - Math.abs(wanted) - woofer.travelM()));
    }
    Change expected = response.expected(change);
    Woofer changed = expected.applyTo(woofer);
    Map<String, Double> before = new LinkedHashMap<>();
    Map<String, Double> after = new LinkedHashMap<>();
    for (BenchFigure figure : BenchFigure.values()) {
      before.put(figure.key(), figure.of(woofer, air, voltageV));
      after.put(figure.key(), figure.of(changed, air, voltageV));
    }
    List<String> outside = new ArrayList<>();
    for (WindowAim aim : aims) {
      if (!aim.accepts(aim.figure().of(changed, air, voltageV))) {
        outside.add(aim.figure().key());
      }
    }
    if (restPositionM.isPresent()) {
      before.put(REST, restPositionM.getAsDouble());
      after.put(REST, restPositionM.getAsDouble() + expected.restMoveM());
      if (!restWindow.accepts(restPositionM.getAsDouble() + expected.restMoveM())) {
        outside.add(REST);
      }
    }
    List<RequestRow> rows = new ArrayList<>();
    for (Lever lever : change.levers()) {
      rows.add(row(lever, expected, woofer, aims, air, voltageV));
    }
    return new RequestPlan(change, expected, rows, changed, before, after, outside);
  }

  private static RequestRow row(
      Lever lever, Change change, Woofer woofer, List<WindowAim> aims, Air air, double voltageV) {
    Woofer alone = change.only(lever).applyTo(woofer);
    List<String> why = new ArrayList<>();
    for (WindowAim aim : aims) {
      double was = aim.figure().of(woofer, air, voltageV);
      if (aim.cost(aim.figure().of(alone, air, voltageV)) < aim.cost(was)) {
        why.add(aim.figure().key());
      }
    }
    if (lever == Lever.REST_POSITION) {
      why.add(REST);
    }
    return new RequestRow(
        lever,
        why,
        BenchFigure.FS.of(alone, air, voltageV),
        BenchFigure.QTS.of(alone, air, voltageV),
        BenchFigure.LEVEL.of(alone, air, voltageV) - BenchFigure.LEVEL.of(woofer, air, voltageV),
        alone.travelM() - woofer.travelM());
  }
}
