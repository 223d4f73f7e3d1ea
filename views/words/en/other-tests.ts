/** Other tests of the piece on the bench. */
export const otherTests = {
  heading: "Other tests of this piece",
  struckOut: (names: string, more: number) =>
    more === 0 ? `Struck out by them: ${names}.` : `Struck out by them: ${names} and ${more} more.`,
  holes: (names: string) => `Not made, so holes: ${names}.`,
  noHoles: "Every kind of test was made.",
  next: "Next:",
  enter: "Enter a test, or set one aside",
};
