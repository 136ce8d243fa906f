package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.network.ActiveBranch;
import nullplane.network.OwnerKit;
import nullplane.network.PartRating;
import nullplane.network.RatedPart;
import nullplane.network.StackNetwork;
import nullplane.network.Swap;
import nullplane.network.SwapList;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.FamilyParts;
import nullplane.scoring.SharedParts;

/** What an owner solders when one stack becomes another, and what is lost by soldering less. */
final class SwapTables {
  private final DesignSpec spec;
  private final FamilyParts family;

  SwapTables(DesignSpec spec, FamilyParts family) {
    this.spec = spec;
    this.family = family;
  }

  List<Document.Block> blocks() {
    List<Document.Block> blocks = new ArrayList<>();
    boolean filters = family.networks().stream().anyMatch(n -> n instanceof ActiveBranch);
    boolean parts = !family.kit().items().isEmpty();
    if (!parts && !filters) {
      blocks.add(new Document.Paragraph("No stack needs a network: there is nothing to swap."));
      return blocks;
    }
    for (SwapList list : family.swaps()) {
      blocks.add(
          new Document.Heading(
              3, "From " + Lettering.clean(list.from()) + " to " + Lettering.clean(list.to())));
      blocks.add(swaps(list));
    }
    if (parts) {
      blocks.add(new Document.Heading(3, "Owner's kit"));
      blocks.add(kit());
      blocks.add(new Document.Paragraph(ratings()));
    }
    sharing(blocks);
    return blocks;
  }

  private Document.Block swaps(SwapList list) {
    StackNetwork from = family.network(list.from());
    StackNetwork to = family.network(list.to());
    if (from instanceof ActiveBranch || to instanceof ActiveBranch) {
      return new Document.Paragraph(
          from.equals(to)
              ? "The filter stays as it is set: " + NetworkWords.fully(to) + "."
              : "Set the filter anew, from " + words(from) + " to " + words(to) + ".");
    }
    if (list.swaps().isEmpty()) {
      return new Document.Paragraph("Neither has a network; nothing is swapped.");
    }
    List<List<String>> rows = new ArrayList<>();
    for (Swap swap : list.swaps()) {
      rows.add(row(swap));
    }
    return new Document.Table(
        List.of("Place", "What to do", "Part before", "Part after", "It must stand"),
        rows,
        List.of(false, false, false, false, false));
  }

  private static String words(StackNetwork network) {
    return network.none() ? "no change of the signal" : NetworkWords.fully(network);
  }

  private static List<String> row(Swap swap) {
    String place = swap.place().designator() + ", " + swap.place().label();
    if (swap instanceof Swap.Stays stays) {
      String value = value(stays.part());
      return List.of(place, "stays", value, value, stands(stays.part()));
    }
    if (swap instanceof Swap.Changes changes) {
      return List.of(
          place, "changes", value(changes.old()), value(changes.fresh()), stands(changes.fresh()));
    }
    if (swap instanceof Swap.Comes comes) {
      return List.of(place, "comes", "none", value(comes.part()), stands(comes.part()));
    }
    RatedPart gone = ((Swap.Goes) swap).part();
    return List.of(place, "goes", value(gone), "none", "-");
  }

  private static String value(RatedPart part) {
    return NetworkWords.value(part.part(), true);
  }

  /** Returns what a part is bought by, in words. */
  static String stands(RatedPart part) {
    PartRating rating = part.rating();
    String at = " at " + Figures.hertz(rating.atHz());
    return switch (part.part().kind()) {
      case CAPACITOR -> Figures.of(rating.peakVoltageV(), "V") + " peak" + at;
      case RESISTOR -> Figures.of(rating.powerW(), "W") + at;
      case COIL ->
          Figures.of(rating.currentA(), "A")
              + at
              + ", "
              + Figures.of(rating.powerW(), "W")
              + " of heat";
    };
  }

  private Document.Table kit() {
    List<List<String>> rows = new ArrayList<>();
    for (OwnerKit.Item item : family.kit().items()) {
      rows.add(
          List.of(
              item.part().place().designator() + ", " + item.part().place().label(),
              value(item.part()),
              String.join(", ", item.stacks().stream().map(Lettering::clean).toList()),
              stands(item.part())));
    }
    return new Document.Table(
        List.of("Place", "Part", "Used in", "It must stand"),
        rows,
        List.of(false, false, false, false));
  }

  private String ratings() {
    return "With these parts every stack can be built, one at a time. What a part must stand is for"
        + " a lasting sine at its worst frequency, at each frequency as loud as the amplifier's "
        + Figures.of(spec.amplifier().voltageV(), "V")
        + ", the woofers' travel or their rated heat allow, whichever comes first. Music asks for"
        + " less on average; all the same, buy no part below these figures.";
  }

  private void sharing(List<Document.Block> blocks) {
    if (family.shared().isEmpty()) {
      return;
    }
    blocks.add(new Document.Heading(3, "What it costs to swap less"));
    List<List<String>> rows = new ArrayList<>();
    for (SharedParts pair : family.shared()) {
      rows.add(row(pair, "the series coil", pair.coil(), true));
      rows.add(row(pair, "the whole network", pair.network(), false));
    }
    blocks.add(
        new Document.Table(
            List.of(
                "Stacks",
                "Both keep",
                "Networks that do so best",
                "Lost in the first",
                "Lost in the second"),
            rows,
            List.of(false, false, false, true, true)));
    blocks.add(
        new Document.Paragraph(
            "Lost against the best network of each stack on its own: first the rms deviation of the"
                + " level, then the cost by the priorities, parts included. A rms deviation below 0 dB"
                + " means that the best network was chosen for its parts and not for its level."
                + " Wirings stay as they are."));
  }

  private static List<String> row(
      SharedParts pair, String what, Optional<SharedParts.Sharing> sharing, boolean both) {
    String stacks = Lettering.clean(pair.from()) + ", " + Lettering.clean(pair.to());
    if (sharing.isEmpty()) {
      return List.of(stacks, what, "none is allowed in both", "-", "-");
    }
    String from = NetworkWords.shortly(sharing.get().from().network());
    String to = NetworkWords.shortly(sharing.get().to().network());
    return List.of(
        stacks,
        what,
        both && !from.equals(to) ? from + "; " + to : from,
        lost(sharing.get().from()),
        lost(sharing.get().to()));
  }

  private static String lost(SharedParts.Side side) {
    return Figures.signedDecibels(side.shapeLossDb())
        + " rms, "
        + Figures.signedDecibels(side.costLossDb())
        + " cost";
  }
}
