/** The decision rule: its choice on Settings and its verdict beside a finding. */
export const decision = {
  heading: "Under the decision rule agreed before measuring",
  verdicts: {
    pass: "Pass",
    "conditional-pass": "Conditional pass",
    "conditional-fail": "Conditional fail",
    fail: "Fail",
  },
  between: (low: string, high: string) => `${low} to ${high} g/cm³`,
  limits: (limits: string) => `Limits of the claim at the temperature of the water: ${limits}.`,
  acceptance: (interval: string) => `Accepted under the rule: ${interval}.`,
  choice: "Decision rule for the limits of a claim",
  choiceHint:
    "Fixed in a piece, with the confidence, when it is put on the bench: a rule chosen after the value is known decides nothing. The finding stands with every rule; a rule adds a verdict.",
  choices: {
    none: {
      name: "no verdict",
      risk: "The finding alone: what the density excludes and what it leaves alive.",
    },
    simple: {
      name: "simple acceptance",
      risk: "Accepted inside the limits. At a limit up to half of what is accepted is wrong.",
    },
    "guard-band": {
      name: "guard band",
      risk: "Accepted only when inside by the guard band. With 1 U at 95.45 % at most 2.3 % of what is accepted at one limit is wrong; a coarse scale accepts nothing.",
    },
    "pass-and-conditional": {
      name: "pass and conditional",
      risk: "Four answers. A pass risks at most 2.3 % with 1 U, a conditional pass up to half.",
    },
  },
  multiple: "Width of the guard band",
  multipleHint: "in expanded uncertainties; 1 is usual",
  multipleWrong: {
    what: "The width of the guard band is out of range.",
    right: "Right: a number from 0.1 to 3, such as 1.",
    todo: "Correct it and keep again.",
  },
};
