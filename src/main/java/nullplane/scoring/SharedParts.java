package nullplane.scoring;

import java.util.Optional;
import nullplane.network.StackNetwork;

/**
 * What it costs to keep parts when one stack becomes another, against the network that suits each
 * stack best. Wirings stay as they were chosen. Of all networks that share, those are taken whose
 * costs add up to the least.
 *
 * @param from name of the stack before
 * @param to name of the stack after
 * @param coil both keep the series coil, or both have none; empty if nothing that is allowed does
 * @param network both keep the whole network; empty if no network is allowed in both
 */
public record SharedParts(
    String from, String to, Optional<Sharing> coil, Optional<Sharing> network) {

  /**
   * Networks that share.
   *
   * @param from the stack before
   * @param to the stack after
   */
  public record Sharing(Side from, Side to) {}

  /**
   * One stack with a network that shares.
   *
   * @param network the network
   * @param costLossDb what it costs beyond the best one (dB), 0 or more
   * @param shapeLossDb root-mean-square deviation beyond the best one's (dB); below 0 where the
   *     best one saves parts and not decibels
   */
  public record Side(StackNetwork network, double costLossDb, double shapeLossDb) {}
}
