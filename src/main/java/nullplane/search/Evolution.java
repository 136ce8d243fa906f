package nullplane.search;

import io.jenetics.DoubleGene;
import io.jenetics.Phenotype;
import io.jenetics.util.ISeq;
import io.jenetics.util.RandomRegistry;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import nullplane.units.Curve;

/**
 * Evolves one generation from another, on the calling thread. Chance is seeded anew for each
 * generation, from the seed and the generation's number alone.
 *
 * <p>Source of the generation's course: K. Deb, A. Pratap, S. Agarwal, T. Meyarivan, IEEE Trans.
 * Evol. Comput. 6 (2002) 182, section III C; but parents win by dominance and then by room, not by
 * their fronts' ranks. On woofers with networks this gains about a sixth of the volume at equal
 * evaluations, for a lone candidate of a later front has what the first front lacks. Source of the
 * first population: M. D. McKay, R. J. Beckman, W. J. Conover, Technometrics 21 (1979) 239 (Latin
 * hypercube sampling).
 */
final class Evolution {
  /** How often a child that has a twin is changed before it is taken as it is. */
  private static final int MOST_CHANGES = 10;

  private final ParetoProblem problem;
  private final int[] choices;
  private final Variation variation;
  private final long seed;
  private final int size;

  /**
   * @param problem what is evolved
   * @param seed seed of all chance
   * @param size candidates in a population
   */
  Evolution(ParetoProblem problem, long seed, int size) {
    this.problem = problem;
    this.seed = seed;
    this.size = size;
    this.choices = new int[problem.genes()];
    for (int i = 0; i < choices.length; i++) {
      choices[i] = problem.choices(i);
      if (choices[i] < 0) {
        throw new IllegalArgumentException(
            "gene " + i + " has " + choices[i] + " choices; allowed: 0 or more");
      }
    }
    this.variation = new Variation(choices);
  }

  /** Returns the source of chance of a generation. */
  private RandomGenerator chance(long generation) {
    return new SplittableRandom(mixed(mixed(seed) + generation));
  }

  /**
   * Spreads the bits of a number.
   *
   * <p>Source: G. L. Steele, D. Lea, C. H. Flood, Fast splittable pseudorandom number generators,
   * OOPSLA 2014, figure 16 (variant 13 by D. Stafford).
   */
  private static long mixed(long number) {
    long z = number;
    z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
    z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
    return z ^ (z >>> 31);
  }

  /**
   * Returns genes for a fresh population: those given, then ones spread evenly in each gene.
   *
   * @param generation number of the generation
   * @param given genes to take first
   * @param count how many in all
   */
  List<double[]> fresh(long generation, List<double[]> given, int count) {
    RandomGenerator random = chance(generation);
    List<double[]> all = new ArrayList<>();
    for (int i = 0; i < Math.min(count, given.size()); i++) {
      all.add(settled(given.get(i)));
    }
    int more = count - all.size();
    int first = all.size();
    for (int i = 0; i < more; i++) {
      all.add(new double[choices.length]);
    }
    for (int gene = 0; gene < choices.length; gene++) {
      int[] layers = shuffled(more, random);
      for (int i = 0; i < more; i++) {
        all.get(first + i)[gene] = (layers[i] + random.nextDouble()) / more;
      }
    }
    all.subList(first, count).replaceAll(this::settled);
    return all;
  }

  private static int[] shuffled(int count, RandomGenerator random) {
    int[] all = new int[count];
    for (int i = 0; i < count; i++) {
      int j = random.nextInt(i + 1);
      all[i] = all[j];
      all[j] = i;
    }
    return all;
  }

  /** Returns genes with each that counts in the middle of its value's part. */
  private double[] settled(double[] genes) {
    if (genes.length != choices.length) {
      throw new IllegalArgumentException(
          genes.length + " genes; the problem has " + choices.length);
    }
    double[] settled = genes.clone();
    for (int i = 0; i < settled.length; i++) {
      if (!(settled[i] >= 0) || !(settled[i] <= 1)) {
        throw new IllegalArgumentException("gene " + i + " is " + settled[i] + "; allowed: 0 to 1");
      }
      if (choices[i] > 0) {
        settled[i] = ParetoProblem.share(ParetoProblem.choice(settled[i], choices[i]), choices[i]);
      }
    }
    return settled;
  }

  /**
   * Returns the genes of children.
   *
   * @param generation number of the generation
   * @param population the parents, best first
   * @param count how many children, at most a population
   */
  List<double[]> children(long generation, List<Candidate> population, int count) {
    RandomGenerator random = chance(generation);
    List<Merit> merits = population.stream().map(Candidate::merit).toList();
    double[] room = CrowdedSelection.room(merits);
    List<Phenotype<DoubleGene, Merit>> parents = new ArrayList<>();
    while (parents.size() < size) {
      // Tournaments of two, everybody in one per round.
      int[] order = shuffled(population.size(), random);
      for (int i = 0; i < order.length && parents.size() < size; i += 2) {
        int winner = winner(merits, room, order[i], order[Math.min(i + 1, order.length - 1)]);
        parents.add(individual(population.get(winner), generation));
      }
    }
    ISeq<Phenotype<DoubleGene, Merit>> altered =
        RandomRegistry.with(random, r -> variation.alter(ISeq.of(parents), generation))
            .population();
    Set<Curve> known = new HashSet<>();
    for (Candidate parent : population) {
      known.add(parent.genes());
    }
    List<double[]> children = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double[] genes = Variation.genesOf(altered.get(i));
      for (int c = 0; c < MOST_CHANGES && known.contains(Curve.of(genes)); c++) {
        genes = variation.neighbour(genes, random);
      }
      known.add(Curve.of(genes));
      children.add(genes);
    }
    return children;
  }

  /**
   * Returns which of two becomes a parent: the one that dominates the other; else the one with more
   * room, whatever fronts they are in; else the one that stands before.
   */
  private static int winner(List<Merit> merits, double[] room, int one, int two) {
    int dominance = merits.get(one).dominance(merits.get(two));
    if (dominance == 0) {
      dominance = Double.compare(room[one], room[two]);
    }
    return dominance > 0 ? one : dominance < 0 ? two : Math.min(one, two);
  }

  /** Has candidates evaluated, and returns them in order. */
  List<Candidate> evaluated(List<double[]> batch) {
    List<double[]> copies = batch.stream().map(double[]::clone).toList();
    List<Merit> merits = problem.evaluate(copies);
    if (merits.size() != batch.size()) {
      throw new IllegalStateException(
          "a problem returned " + merits.size() + " merits for " + batch.size() + " candidates");
    }
    List<Candidate> evaluated = new ArrayList<>();
    for (int i = 0; i < batch.size(); i++) {
      Merit merit = merits.get(i);
      if (merit.objectives().size() != problem.objectives()) {
        throw new IllegalStateException(
            "a merit of "
                + merit.objectives().size()
                + " objectives; the problem states "
                + problem.objectives());
      }
      evaluated.add(new Candidate(Curve.of(batch.get(i)), merit));
    }
    return evaluated;
  }

  /** Returns those that survive, best first. */
  List<Candidate> survivors(List<Candidate> population, List<Candidate> children) {
    List<Candidate> all = new ArrayList<>(population);
    all.addAll(children);
    List<Merit> merits = all.stream().map(Candidate::merit).toList();
    return CrowdedSelection.best(merits, Math.min(size, all.size())).stream()
        .map(all::get)
        .toList();
  }

  private static Phenotype<DoubleGene, Merit> individual(Candidate candidate, long generation) {
    return Phenotype.of(
        Variation.genotype(candidate.genes().toArray()), generation, candidate.merit());
  }
}
