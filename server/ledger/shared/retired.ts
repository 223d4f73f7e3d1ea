/** Rows of a chain that were kept for as long as they had to be and are gone; what proves the others stays. */
export interface RetiredRun {
  /** the row before the first that is gone */
  after: number;
  /** the last that is gone */
  upto: number;
  before_hash: string;
  hash: string;
  /** roots of the full subtrees of the first `upto` entries, largest first, with a space between */
  peaks: string;
}
