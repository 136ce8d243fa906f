package nullplane.network;

/** An {@link ActiveBranch} prepared for one frequency axis. Immutable. */
public final class ActiveRows implements NetworkRows {
  private final double[] re;
  private final double[] im;
  private final double[] squared;

  ActiveRows(ComplexCurve response) {
    re = response.re().toArray();
    im = response.im().toArray();
    squared = new double[re.length];
    for (int f = 0; f < re.length; f++) {
      squared[f] = re[f] * re[f] + im[f] * im[f];
    }
  }

  @Override
  public boolean amplifierBehind() {
    return true;
  }

  @Override
  public void transferSquared(LoadRows stack, LoadRows scratch, double[] out) {
    System.arraycopy(squared, 0, out, 0, squared.length);
  }

  @Override
  public void transfer(LoadRows stack, LoadRows scratch, double[] outRe, double[] outIm) {
    System.arraycopy(re, 0, outRe, 0, re.length);
    System.arraycopy(im, 0, outIm, 0, im.length);
  }

  @Override
  public void inputImpedance(LoadRows stack, LoadRows scratch, double[] outRe, double[] outIm) {
    for (int f = 0; f < re.length; f++) {
      double inverse = 1 / stack.squaredModulus(f);
      outRe[f] = stack.re[f] * inverse;
      outIm[f] = -stack.im[f] * inverse;
    }
  }

  @Override
  public double pass(LoadRows stack, LoadRows scratch, double[] out) {
    System.arraycopy(squared, 0, out, 0, squared.length);
    double most = 0;
    for (int f = 0; f < re.length; f++) {
      most = Math.max(most, stack.squaredModulus(f));
    }
    return 1 / most;
  }
}
