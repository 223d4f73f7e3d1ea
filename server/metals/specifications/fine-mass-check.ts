/** Rounding a stated figure may hide: half a unit of its last decimal. */
function halfLastPlace(text: string): number {
  const decimals = /\.(\d*)$/.exec(text)?.[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}

/**
 * Mass times fineness must be the stated fine mass, within what rounding of the three stated figures allows. All three as
 * decimal text, masses in grams, fineness in ‰, so that 7.3224 and 7.32 are told apart. Returns the computed fine mass, g.
 * Throws RangeError with both numbers when they do not go together.
 */
export function checkFineMass(massG: string, finenessPermille: string, fineMassG: string): number {
  const [mass, fineness, stated] = [massG, finenessPermille, fineMassG].map(Number) as [
    number,
    number,
    number,
  ];
  for (const [name, text, value] of [
    ["Mass", massG, mass],
    ["Fineness", finenessPermille, fineness],
    ["Fine mass", fineMassG, stated],
  ] as const)
    if (!(value > 0)) throw new RangeError(`${name} "${text}": right is a decimal number above zero.`);
  if (fineness > 1000)
    throw new RangeError(
      `Fineness ${finenessPermille} ‰: right is at most 1000; enter per mille, such as 916.7.`,
    );
  const computed = (mass * fineness) / 1000;
  const slack =
    halfLastPlace(fineMassG) +
    (halfLastPlace(massG) * fineness + halfLastPlace(finenessPermille) * mass) / 1000;
  if (Math.abs(computed - stated) > slack)
    throw new RangeError(
      `Mass ${massG} g × fineness ${finenessPermille} ‰ is ${+computed.toPrecision(7)} g of fine metal, but ${fineMassG} g is stated. One of the three is wrong: look at the source again; is the stated mass the fine mass, or in ounces?`,
    );
  return computed;
}
