/** The three questions of a new bench. */
export const firstStart = {
  welcome: "Welcome",
  firstQuestions: "First questions",
  lead: "Three questions, then the first piece. Everything can be changed under Settings.",
  water: "1. Where does the water stand?",
  onScale: "On the scale",
  onScaleHint: "any scale will do: the piece hangs from a stand, the scale shows the rise",
  beside: "Beside or under it",
  besideHint: "the piece hangs from the balance: a hook below the pan, or a frame on it",
  inFlask: "In a flask with the piece",
  inFlaskHint: "filings, grains and small scrap",
  source: "2. How does the reading get here?",
  typed: "I type it",
  typedHint: "comma or point, any unit",
  cable: "By cable or network",
  cableHint: "serial, USB or TCP; the bench learns its lines",
  simulated: "Just let me try",
  simulatedHint: "a simulated balance and invented pieces, marked as such",
  metal: "3. Which metal do you mostly see?",
  go: "Set up the bench",
};

/** The three ways to weigh, as titles of their drawings. */
export const methods = {
  hung: "Hung: the piece hangs from the balance in water that stands beside it",
  displaced: "Displaced: the water stands on the scale, the piece hangs from a stand",
  flask: "Flask: small pieces inside a filled flask",
};

/** Labels of the drawings. */
export const drawings = {
  balance: "balance",
  scale: "scale",
  water: "water",
  hanger: "hanger",
  stand: "stand",
  stopper: "stopper",
  grains: "grains",
};
