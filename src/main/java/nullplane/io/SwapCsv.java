package nullplane.io;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.network.ActiveBranch;
import nullplane.network.OwnerKit;
import nullplane.network.PartPlace;
import nullplane.network.PartRating;
import nullplane.network.RatedPart;
import nullplane.network.SeriesCoil;
import nullplane.network.StackNetwork;
import nullplane.network.Swap;
import nullplane.network.SwapList;
import nullplane.scoring.FamilyParts;

/**
 * What an owner swaps and keeps, as two tables. Ratings are for a lasting sine at its worst
 * frequency. Source: RFC 4180.
 */
public final class SwapCsv {
  private static final List<String> RATING =
      List.of("peak voltage [V]", "current [A]", "power [W]", "worst at [Hz]");

  private SwapCsv() {}

  /**
   * Returns the bytes of the swap list: one row per place and pair of stacks. Ratings are those of
   * the part that is there afterwards; of the one that goes, if none is. Filters have a row of
   * their own: what they are set to.
   *
   * @param family the family's parts
   */
  public static byte[] swaps(FamilyParts family) {
    CsvText text = new CsvText();
    List<String> head =
        new ArrayList<>(
            List.of(
                "from stack",
                "to stack",
                "designator",
                "place",
                "action",
                "unit",
                "value before",
                "value after",
                "coil resistance after [ohm]"));
    head.addAll(RATING);
    text.row(head);
    for (SwapList list : family.swaps()) {
      for (Swap swap : list.swaps()) {
        text.row(row(list, swap));
      }
      filter(family, list).ifPresent(text::row);
    }
    return text.bytes();
  }

  /** Returns the row of a pair whose filters are set and not soldered. */
  private static Optional<List<String>> filter(FamilyParts family, SwapList list) {
    StackNetwork from = family.network(list.from());
    StackNetwork to = family.network(list.to());
    if (!(from instanceof ActiveBranch) && !(to instanceof ActiveBranch)) {
      return Optional.empty();
    }
    return Optional.of(
        List.of(
            CsvText.name(list.from()),
            CsvText.name(list.to()),
            "",
            "filter",
            from.equals(to) ? "stays" : "set anew",
            "",
            NetworkText.of(from),
            NetworkText.of(to),
            "",
            "",
            "",
            "",
            ""));
  }

  private static List<String> row(SwapList list, Swap swap) {
    Optional<RatedPart> before = before(swap);
    Optional<RatedPart> after = after(swap);
    RatedPart rated = after.or(() -> before).orElseThrow();
    PartPlace place = swap.place();
    List<String> cells = new ArrayList<>();
    cells.add(CsvText.name(list.from()));
    cells.add(CsvText.name(list.to()));
    cells.add(place.designator());
    cells.add(place.label());
    cells.add(action(swap));
    cells.add(NetworkText.unit(rated.part()));
    cells.add(before.map(part -> NetworkText.value(part.part())).orElse("none"));
    cells.add(after.map(part -> NetworkText.value(part.part())).orElse("none"));
    cells.add(after.map(SwapCsv::resistance).orElse(""));
    rating(cells, rated.rating());
    return cells;
  }

  /** Returns what happens in a place, in one word. */
  static String action(Swap swap) {
    if (swap instanceof Swap.Stays) {
      return "stays";
    }
    return swap instanceof Swap.Changes ? "changes" : swap instanceof Swap.Comes ? "comes" : "goes";
  }

  /** Returns the part that is there before. */
  static Optional<RatedPart> before(Swap swap) {
    if (swap instanceof Swap.Stays stays) {
      return Optional.of(stays.part());
    }
    if (swap instanceof Swap.Changes changes) {
      return Optional.of(changes.old());
    }
    return swap instanceof Swap.Goes goes ? Optional.of(goes.part()) : Optional.empty();
  }

  /** Returns the part that is there afterwards. */
  static Optional<RatedPart> after(Swap swap) {
    if (swap instanceof Swap.Stays stays) {
      return Optional.of(stays.part());
    }
    if (swap instanceof Swap.Changes changes) {
      return Optional.of(changes.fresh());
    }
    return swap instanceof Swap.Comes comes ? Optional.of(comes.part()) : Optional.empty();
  }

  /**
   * Returns the bytes of the owner's kit: one row per part.
   *
   * @param kit the kit
   */
  public static byte[] kit(OwnerKit kit) {
    CsvText text = new CsvText();
    List<String> head =
        new ArrayList<>(
            List.of("designator", "place", "value", "unit", "coil resistance [ohm]", "stacks"));
    head.addAll(RATING);
    text.row(head);
    for (OwnerKit.Item item : kit.items()) {
      RatedPart part = item.part();
      List<String> cells = new ArrayList<>();
      cells.add(part.place().designator());
      cells.add(part.place().label());
      cells.add(NetworkText.value(part.part()));
      cells.add(NetworkText.unit(part.part()));
      cells.add(resistance(part));
      cells.add(CsvText.name(String.join("; ", item.stacks())));
      rating(cells, part.rating());
      text.row(cells);
    }
    return text.bytes();
  }

  private static String resistance(RatedPart part) {
    return part.part() instanceof SeriesCoil coil
        ? DecimalText.rounded(coil.resistanceOhm(), 0)
        : "";
  }

  private static void rating(List<String> cells, PartRating rating) {
    cells.add(DecimalText.rounded(rating.peakVoltageV(), 0));
    cells.add(DecimalText.rounded(rating.currentA(), 0));
    cells.add(DecimalText.rounded(rating.powerW(), 0));
    cells.add(DecimalText.rounded(rating.atHz(), 0));
  }
}
