package nullplane.network;

import java.util.Optional;
import nullplane.units.Curve;

/** A {@link LowPassBranch} prepared for one frequency axis. Immutable. */
public final class BranchRows implements NetworkRows {
  private final SeriesRows series;
  private final Optional<ShuntRows> shunt;

  /**
   * @param branch the branch
   * @param frequencyHz frequencies (Hz), each above 0
   */
  BranchRows(LowPassBranch branch, Curve frequencyHz) {
    series =
        new SeriesRows(
            branch.seriesResistanceOhm(), branch.seriesCoil().inductanceH(), frequencyHz);
    shunt = branch.shuntRows(frequencyHz);
  }

  @Override
  public boolean amplifierBehind() {
    return false;
  }

  @Override
  public void transferSquared(LoadRows stack, LoadRows scratch, double[] out) {
    series.transferSquared(shunted(stack, scratch), out);
  }

  @Override
  public void transfer(LoadRows stack, LoadRows scratch, double[] re, double[] im) {
    series.transfer(shunted(stack, scratch), re, im);
  }

  @Override
  public void inputImpedance(LoadRows stack, LoadRows scratch, double[] re, double[] im) {
    series.inputImpedance(shunted(stack, scratch), re, im);
  }

  @Override
  public double pass(LoadRows stack, LoadRows scratch, double[] out) {
    LoadRows load = shunted(stack, scratch);
    series.transferSquared(load, out);
    return series.leastInputSquared(load, out);
  }

  private LoadRows shunted(LoadRows stack, LoadRows scratch) {
    if (shunt.isEmpty()) {
      return stack;
    }
    scratch.setShunted(stack, shunt.get());
    return scratch;
  }
}
