/** Cautions that stand on pages. Common practice of the trade; local codes and licensed practice come first. */
export const cautions = {
  wetting: "Before it gets wet",
  wettingLead: "Ask, and have the owner's consent. Do not immerse:",
  notToBeWetted: [
    "pearl, opal, turquoise, coral, amber, ivory",
    "glued, foiled or strung stones",
    "hollow pieces and pieces with a filling: water gets in and stays",
    "sealed or graded coins, and coins whose patina matters",
    "watches, and anything with a spring or a clasp of steel",
  ],
  testing: "Acids and strong magnets",
  acid: "Acid is never the first test here, and it marks the piece. It needs eye, hand and breath protection, and training under your local rules.",
  magnet:
    "A strong magnet crushes fingers, stops pacemakers and disturbs balances: keep it an arm's length from all three.",
  buying: "When money changes hands",
  buyingWhat:
    "A scale used for buying must be legally verified, and its own indication is the one that counts; what is computed here is for information. Rules for dealing and hallmarking are local. Fineness for settlement is found by a licensed laboratory: gold by ISO 11426, silver by ISO 11427.",
};
