package nullplane.io;

import java.io.IOException;
import java.util.Optional;
import nullplane.network.OwnerKit;
import nullplane.network.RatedPart;
import nullplane.network.Swap;
import nullplane.network.SwapList;
import nullplane.scoring.FamilyParts;
import nullplane.scoring.SharedParts;

/** Writes what an owner swaps and keeps into a woofer's object. Values in SI units. */
final class FamilyJson {
  private final JsonText json;

  FamilyJson(JsonText json) {
    this.json = json;
  }

  void write(FamilyParts family) throws IOException {
    json.objects("swaps", family.swaps(), list -> swaps(family, list));
    json.objects("ownerKit", family.kit().items(), this::item);
  }

  private void swaps(FamilyParts family, SwapList list) throws IOException {
    json.text("from", list.from());
    json.text("to", list.to());
    json.objects("places", list.swaps(), this::swap);
    Optional<SharedParts> shared = family.shared(list);
    if (shared.isPresent()) {
      sharing("sameCoil", shared.get().coil());
      sharing("sameNetwork", shared.get().network());
    }
  }

  private void swap(Swap swap) throws IOException {
    json.text("designator", swap.place().designator());
    json.text("place", swap.place().label());
    json.text("action", SwapCsv.action(swap));
    part("before", SwapCsv.before(swap));
    part("after", SwapCsv.after(swap));
  }

  private void part(String field, Optional<RatedPart> part) throws IOException {
    if (part.isPresent()) {
      json.object(field, () -> rated(part.get()));
    } else {
      json.none(field);
    }
  }

  private void item(OwnerKit.Item item) throws IOException {
    rated(item.part());
    json.texts("stacks", item.stacks());
  }

  private void rated(RatedPart part) throws IOException {
    NetworkJson.part(json, part.placed());
    json.number("peakVoltageV", part.rating().peakVoltageV());
    json.number("currentA", part.rating().currentA());
    json.number("powerW", part.rating().powerW());
    json.number("worstAtHz", part.rating().atHz());
  }

  private void sharing(String field, Optional<SharedParts.Sharing> sharing) throws IOException {
    if (sharing.isEmpty()) {
      json.none(field);
      return;
    }
    json.object(
        field,
        () -> {
          json.object("from", () -> side(sharing.get().from()));
          json.object("to", () -> side(sharing.get().to()));
        });
  }

  private void side(SharedParts.Side side) throws IOException {
    json.number("costLossDb", side.costLossDb());
    json.number("shapeLossDb", side.shapeLossDb());
    json.object("network", () -> NetworkJson.write(json, side.network()));
  }
}
