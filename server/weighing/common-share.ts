/** What is drawn anew with every reading; all else in a budget is the same for every piece weighed on that bench. */
const anew = /(repeatability|resolution at zero|resolution at load|zero drift)$/;

/** The share of the variance of a density that every piece has in common, 0 to 1; 1 where no budget is kept. */
export function commonShare(budget: readonly { input: string; share: number }[] | undefined): number {
  if (budget === undefined || budget.length === 0) return 1;
  const own = budget.filter(({ input }) => anew.test(input)).reduce((sum, { share }) => sum + share, 0);
  return Math.min(1, Math.max(0, 1 - own));
}
