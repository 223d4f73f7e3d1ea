/** Inputs of a budget that further immersions would lessen. */
const lessenedByRepeats = /repeatability/;

/** Share of the variance, 0 to 1, that further immersions would lessen. */
export const repeatsShare = (budget: readonly { input: string; share: number }[]): number =>
  budget.filter(({ input }) => lessenedByRepeats.test(input)).reduce((sum, { share }) => sum + share, 0);
