package nullplane.search;

import java.util.Arrays;
import nullplane.scoring.Grade;

/** A candidate with its grade; ordered by grade, then by genes, so that the order is unique. */
final class ScoredGenes implements Comparable<ScoredGenes> {
  private final double[] genes;
  private final Grade grade;

  ScoredGenes(double[] genes, Grade grade) {
    this.genes = genes.clone();
    this.grade = grade;
  }

  double[] genes() {
    return genes.clone();
  }

  Grade grade() {
    return grade;
  }

  @Override
  public int compareTo(ScoredGenes other) {
    int byGrade = grade.compareTo(other.grade);
    return byGrade != 0 ? byGrade : Arrays.compare(genes, other.genes);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ScoredGenes scored && compareTo(scored) == 0;
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(genes) + grade.hashCode();
  }
}
