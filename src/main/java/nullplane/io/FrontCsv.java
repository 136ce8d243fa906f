package nullplane.io;

import java.util.ArrayList;
import java.util.List;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.scoring.DesignSpec;
import nullplane.search.FrontMember;
import nullplane.search.FrontObjective;
import nullplane.units.Air;

/**
 * The best compromises of a search as a table, one row per woofer with its networks, in ascending
 * order of shape. Source: RFC 4180.
 */
public final class FrontCsv {
  private FrontCsv() {}

  /**
   * Returns the bytes of the table.
   *
   * @param spec the spec
   * @param front the compromises
   * @param air the air that fs and Qts in free air hold for
   * @throws IllegalStateException if a number to be written is not finite
   */
  public static byte[] of(DesignSpec spec, List<FrontMember> front, Air air) {
    CsvText text = new CsvText();
    List<String> head =
        new ArrayList<>(
            List.of("rank", "fs [Hz]", "qts", "moving-mass [g]", "travel [mm]", "re [ohm]"));
    head.add("cost [dB]");
    for (FrontObjective objective : FrontObjective.values()) {
      head.add(objective.word() + " [" + objective.unit() + "]");
    }
    head.add("outside corridor [dB]");
    spec.stacks()
        .forEach(
            stack -> {
              head.add(CsvText.name(stack.name() + ": wiring"));
              head.add(CsvText.name(stack.name() + ": network"));
            });
    text.row(head);
    front.forEach(member -> text.row(row(member, air)));
    return text.bytes();
  }

  private static List<String> row(FrontMember member, Air air) {
    Woofer woofer = member.woofer();
    SmallSignal set = SmallSignal.of(woofer, Mounting.FREE_AIR, air);
    List<String> cells = new ArrayList<>();
    cells.add(member.rank().isPresent() ? Integer.toString(member.rank().getAsInt()) : "");
    cells.add(number("fs", set.resonanceHz(), 0));
    cells.add(number("qts", set.totalQ(), 0));
    cells.add(number("moving mass", woofer.bareMassKg(), 3));
    cells.add(number("travel", woofer.travelM(), 3));
    cells.add(number("re", woofer.resistanceOhm(), 0));
    cells.add(number("cost", member.score().grade().costDb(), 0));
    for (FrontObjective objective : FrontObjective.values()) {
      cells.add(number(objective.word(), objective.of(member), 0));
    }
    cells.add(number("outside corridor", member.score().outsideDb(), 0));
    for (int s = 0; s < member.networks().size(); s++) {
      cells.add(member.wirings().get(s).inWords());
      cells.add(NetworkText.of(member.networks().get(s)));
    }
    return cells;
  }

  private static String number(String name, double value, int decimals) {
    if (!Double.isFinite(value)) {
      throw new IllegalStateException(name + " of a compromise is " + value);
    }
    return DecimalText.rounded(value, decimals);
  }
}
