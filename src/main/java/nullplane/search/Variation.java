package nullplane.search;

import io.jenetics.Alterer;
import io.jenetics.AltererResult;
import io.jenetics.DoubleChromosome;
import io.jenetics.DoubleGene;
import io.jenetics.Genotype;
import io.jenetics.Phenotype;
import io.jenetics.util.ISeq;
import io.jenetics.util.RandomRegistry;
import io.jenetics.util.Seq;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * Makes two children of each pair of neighbours: simulated binary crossover of every second gene,
 * exchange of genes, then polynomial mutation of two genes on average, of one where there are two,
 * all within 0 to 1. A gene that counts is exchanged only, and mutates to a neighbouring value as
 * often as to any other.
 *
 * <p>Sources: K. Deb, R. B. Agrawal, Simulated binary crossover for continuous search space,
 * Complex Systems 9 (1995) 115, with the spread cut at the bounds as in K. Deb, Comput. Methods
 * Appl. Mech. Eng. 186 (2000) 311; G. Syswerda, Uniform crossover in genetic algorithms, Proc. 3rd
 * Int. Conf. Genetic Algorithms (1989) 2; K. Deb, S. Agrawal, A niched-penalty approach for
 * constraint handling in genetic algorithms, Proc. ICANNGA (1999) 235, for the mutation. The
 * library's simulated binary crossover is not used: it starts from half the difference of the
 * parents, where the source has half their sum.
 */
final class Variation implements Alterer<DoubleGene, Merit> {
  /** Chance that a gene is blended (1). */
  private static final double BLENDING = 0.5;

  /** Chance that a gene is exchanged (1); by trial. */
  private static final double EXCHANGE = 0.2;

  /** Distribution index of crossover (1). */
  private static final double BLENDING_INDEX = 15;

  /** Genes of a child that mutate, on average, when it has many (1); by trial. */
  private static final double MUTATIONS = 2;

  /** Distribution index of mutation (1). */
  private static final double MUTATION_INDEX = 20;

  /** Genes closer than this are not blended (1). */
  private static final double SAME = 1e-14;

  private final int[] choices;

  /**
   * @param choices number of values of each gene, 0 for one that may take any share
   */
  Variation(int[] choices) {
    this.choices = choices.clone();
  }

  @Override
  public AltererResult<DoubleGene, Merit> alter(
      Seq<Phenotype<DoubleGene, Merit>> population, long generation) {
    RandomGenerator random = RandomRegistry.random();
    List<Phenotype<DoubleGene, Merit>> children = new ArrayList<>();
    for (int i = 0; i + 1 < population.size(); i += 2) {
      double[] one = genesOf(population.get(i));
      double[] two = genesOf(population.get(i + 1));
      cross(one, two, random);
      mutate(one, random);
      mutate(two, random);
      children.add(Phenotype.of(genotype(one), generation));
      children.add(Phenotype.of(genotype(two), generation));
    }
    return new AltererResult<>(ISeq.of(children), children.size());
  }

  private void cross(double[] one, double[] two, RandomGenerator random) {
    for (int i = 0; i < one.length; i++) {
      if (choices[i] == 0 && Math.abs(one[i] - two[i]) > SAME && random.nextDouble() < BLENDING) {
        blend(one, two, i, random.nextDouble());
      }
      if (random.nextDouble() < EXCHANGE) {
        double gene = one[i];
        one[i] = two[i];
        two[i] = gene;
      }
    }
  }

  private static void blend(double[] one, double[] two, int gene, double chance) {
    double low = Math.min(one[gene], two[gene]);
    double high = Math.max(one[gene], two[gene]);
    double middle = (low + high) / 2;
    double half = (high - low) / 2;
    one[gene] = Math.max(0, middle - half * spread(chance, low / half));
    two[gene] = Math.min(1, middle + half * spread(chance, (1 - high) / half));
  }

  /**
   * Returns the ratio of the children's distance to the parents'.
   *
   * @param chance where in the distribution (1), 0 to 1
   * @param room distance from the outer parent to the bound, in half distances of the parents (1)
   */
  private static double spread(double chance, double room) {
    double cut = 2 - StrictMath.pow(1 + room, -(BLENDING_INDEX + 1));
    double part = chance * cut;
    return StrictMath.pow(part <= 1 ? part : 1 / (2 - part), 1 / (BLENDING_INDEX + 1));
  }

  private void mutate(double[] genes, RandomGenerator random) {
    for (int i = 0; i < genes.length; i++) {
      if (random.nextDouble() * (genes.length + MUTATIONS) < MUTATIONS) {
        genes[i] = mutated(genes[i], choices[i], random);
      }
    }
  }

  /** Returns a child of one: exactly one gene mutated, one that has a choice if there is any. */
  double[] neighbour(double[] genes, RandomGenerator random) {
    double[] child = genes.clone();
    int gene = random.nextInt(genes.length);
    for (int i = 0; i < genes.length && choices[gene] == 1; i++) {
      gene = (gene + 1) % genes.length;
    }
    child[gene] = mutated(child[gene], choices[gene], random);
    return child;
  }

  private static double mutated(double gene, int choices, RandomGenerator random) {
    if (choices == 0) {
      return polynomial(gene, random.nextDouble());
    }
    if (choices == 1) {
      return gene;
    }
    int now = ParetoProblem.choice(gene, choices);
    int other;
    if (random.nextBoolean()) {
      other = now + (random.nextBoolean() ? 1 : -1);
      other = other < 0 ? 1 : other == choices ? choices - 2 : other;
    } else {
      other = random.nextInt(choices - 1);
      other += other >= now ? 1 : 0;
    }
    return ParetoProblem.share(other, choices);
  }

  private static double polynomial(double gene, double chance) {
    double power = MUTATION_INDEX + 1;
    double moved;
    if (chance < 0.5) {
      double edge = StrictMath.pow(1 - gene, power);
      moved = gene + StrictMath.pow(2 * chance + (1 - 2 * chance) * edge, 1 / power) - 1;
    } else {
      double edge = StrictMath.pow(gene, power);
      moved = gene + 1 - StrictMath.pow(2 * (1 - chance) + (2 * chance - 1) * edge, 1 / power);
    }
    return Math.min(1, Math.max(0, moved));
  }

  /** Returns the genes of an individual (1). */
  static double[] genesOf(Phenotype<DoubleGene, Merit> individual) {
    return individual.genotype().chromosome().as(DoubleChromosome.class).toArray();
  }

  /** Returns the genotype of genes. */
  static Genotype<DoubleGene> genotype(double[] genes) {
    DoubleGene[] all = new DoubleGene[genes.length];
    for (int i = 0; i < genes.length; i++) {
      all[i] = DoubleGene.of(genes[i], 0, 1);
    }
    return Genotype.of(DoubleChromosome.of(all));
  }
}
