/** A low result is first a procedure suspicion: rule these out before a metal is doubted (common practice). */
export const whyTooLow: readonly string[] = [
  "bubbles on the piece or the hanger: brush under water, immerse again, see whether the readings creep up",
  "the piece or the hanger touched the wall or the bottom",
  "the hanger hung deeper than when it was zeroed",
  "the water was colder or saltier than entered",
  "grease, lacquer or wax on the piece",
  "closed pores of a casting, a hollow or filled piece, stones, solder",
];

/** A high result has few innocent causes; these are all of them that practice knows. */
export const whyTooHigh: readonly string[] = [
  "the piece was not wholly under water",
  "the hanger was counted in the dry weight, or hung shallower than when it was zeroed",
  "water evaporated between zero and reading, or the balance's zero tracking swallowed part of the rise",
  "open pores still filling with water: weigh dry again and look for a gain",
  "the water was warmer than entered, or taken as 1.000",
  "the piece was weighed dry while still wet (beaker on the pan)",
];
