package nullplane.fit;

import java.util.ArrayList;
import java.util.List;

/**
 * The parameters people read, from those that are fitted, with their joint spread.
 *
 * <p>All but the exponent n are carried as logarithms, so that a relative uncertainty stays one.
 * Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383: Kms = w0^2 Mms, Rms = w0 Mms/Qms, Bl^2
 * = w0 Mms Re/Qes, Vas = rho c^2 Sd^2 Cms; propagation to the first order: JCGM 100:2008 (GUM), eq.
 * 13, with the stated quantities (anchor, area) as further inputs whose effect on the fit itself is
 * the solution's response.
 */
final class DerivedSet {
  private static final double STEP = 1e-4;

  private final FitSetup setup;
  private final Circuit circuit;
  private final double[] theta;
  private final double[][] covariance;
  private final LeastSquares.Spread spread;

  /**
   * @param setup the setup
   * @param trial the fit
   * @param variance variance of a row's noise, weighted (1)
   */
  DerivedSet(FitSetup setup, Trial trial, double variance) {
    this.setup = setup;
    this.circuit = trial.circuit();
    this.theta = trial.theta();
    this.spread = new LeastSquares.Spread(circuit, theta);
    int n = theta.length;
    this.covariance = new double[n + 2][n + 2];
    for (int a = 0; a < n; a++) {
      for (int b = 0; b < n; b++) {
        covariance[a][b] = variance * spread.covariance(a, b);
      }
    }
    addStated(n, setup.anchorError(), 1, 0);
    addStated(n + 1, setup.areaError(), 0, 1);
  }

  private void addStated(int index, double error, double anchor, double area) {
    if (!(error > 0)) {
      return;
    }
    double[] up = shifted(STEP * anchor, STEP * area).residuals(theta);
    double[] down = shifted(-STEP * anchor, -STEP * area).residuals(theta);
    double[] change = new double[up.length];
    for (int row = 0; row < up.length; row++) {
      change[row] = (up[row] - down[row]) / (2 * STEP);
    }
    double[] response = spread.response(change);
    double[] whole = new double[theta.length + 2];
    System.arraycopy(response, 0, whole, 0, response.length);
    whole[index] = 1;
    for (int a = 0; a < whole.length; a++) {
      for (int b = 0; b < whole.length; b++) {
        covariance[a][b] += error * error * whole[a] * whole[b];
      }
    }
  }

  private Circuit shifted(double anchorShift, double areaShift) {
    return setup
        .circuit(circuit.coil(), anchorShift, areaShift)
        .withWeights(circuit.weightMagnitude(), circuit.weightPhase());
  }

  /** Returns the logarithm of a parameter in SI; of n, itself. NaN if it comes out below zero. */
  double value(FittedParameter parameter) {
    return value(parameter, theta, 0, 0);
  }

  private double value(
      FittedParameter parameter, double[] at, double anchorShift, double areaShift) {
    double w0 = at[Circuit.LN_W0];
    double mass = lnMass(at, anchorShift, areaShift);
    return switch (parameter) {
      case RE -> at[Circuit.LN_RE];
      case FS -> w0 - Math.log(2 * Math.PI);
      case QMS -> at[Circuit.LN_QMS];
      case QES -> at[Circuit.LN_QES];
      case QTS -> -Math.log(Math.exp(-at[Circuit.LN_QMS]) + Math.exp(-at[Circuit.LN_QES]));
      case LE -> at[Circuit.COIL];
      case L2, N -> at[Circuit.COIL + 1];
      case R2 -> at[Circuit.COIL + 2];
      case K -> at[Circuit.COIL] - at[Circuit.COIL + 1] * Math.log(circuit.reference());
      case MMS -> mass;
      case BARE_MASS -> Math.log(Math.exp(mass) - setup.airMassKg(areaShift));
      case KMS -> 2 * w0 + mass;
      case CMS -> -2 * w0 - mass;
      case RMS -> w0 + mass - at[Circuit.LN_QMS];
      case BL -> 0.5 * (w0 + mass + at[Circuit.LN_RE] - at[Circuit.LN_QES]);
      case VAS -> {
        double c = setup.input().air().speedOfSoundMPerS();
        double rho = setup.input().air().densityKgPerM3();
        yield Math.log(rho * c * c) + 2 * Math.log(setup.areaM2(areaShift)) - 2 * w0 - mass;
      }
    };
  }

  private double lnMass(double[] at, double anchorShift, double areaShift) {
    return anchorShift == 0 && areaShift == 0
        ? circuit.lnMass(at)
        : shiftedMass(at, anchorShift, areaShift);
  }

  private double shiftedMass(double[] at, double anchorShift, double areaShift) {
    MassAnchor anchor = setup.input().anchor();
    if (anchor instanceof MassAnchor.BareMass bare) {
      return Math.log(bare.massKg() * Math.exp(anchorShift) + setup.airMassKg(areaShift));
    }
    double byForceFactor = anchor instanceof MassAnchor.ForceFactor ? 2 * anchorShift : 0;
    return circuit.lnMass(at) + byForceFactor;
  }

  /** Returns whether a parameter rests on something the data leave open. */
  boolean isOpen(FittedParameter parameter) {
    double[] gradient = gradient(parameter);
    for (int i = 0; i < theta.length; i++) {
      if (spread.isOpen(i) && Math.abs(gradient[i]) > 1e-3) {
        return true;
      }
    }
    return false;
  }

  /** Returns the covariance of parameters, all but n as logarithms (1). */
  double[][] covariance(List<FittedParameter> parameters) {
    List<double[]> gradients = new ArrayList<>();
    for (FittedParameter parameter : parameters) {
      gradients.add(gradient(parameter));
    }
    int count = parameters.size();
    double[][] out = new double[count][count];
    for (int i = 0; i < count; i++) {
      for (int j = 0; j < count; j++) {
        for (int a = 0; a < covariance.length; a++) {
          for (int b = 0; b < covariance.length; b++) {
            out[i][j] += gradients.get(i)[a] * covariance[a][b] * gradients.get(j)[b];
          }
        }
      }
    }
    return out;
  }

  private double[] gradient(FittedParameter parameter) {
    int n = theta.length;
    double[] gradient = new double[n + 2];
    for (int i = 0; i < n; i++) {
      double[] up = theta.clone();
      double[] down = theta.clone();
      up[i] += STEP;
      down[i] -= STEP;
      gradient[i] = (value(parameter, up, 0, 0) - value(parameter, down, 0, 0)) / (2 * STEP);
    }
    gradient[n] =
        (value(parameter, theta, STEP, 0) - value(parameter, theta, -STEP, 0)) / (2 * STEP);
    gradient[n + 1] =
        (value(parameter, theta, 0, STEP) - value(parameter, theta, 0, -STEP)) / (2 * STEP);
    return gradient;
  }
}
