import type { Words } from "../en/index.ts";

/** Die Entscheidungsregel: ihre Wahl in den Einstellungen und ihr Urteil neben dem Befund. */
export const decision: Words["decision"] = {
  heading: "Nach der vor der Messung vereinbarten Entscheidungsregel",
  verdicts: {
    pass: "Angenommen",
    "conditional-pass": "Bedingt angenommen",
    "conditional-fail": "Bedingt abgelehnt",
    fail: "Nicht angenommen",
  },
  between: (low, high) => `${low} bis ${high} g/cm³`,
  limits: (limits) => `Grenzen der Angabe bei der Temperatur des Wassers: ${limits}.`,
  acceptance: (interval) => `Nach der Regel angenommen: ${interval}.`,
  choice: "Entscheidungsregel für die Grenzen einer Angabe",
  choiceHint:
    "Wird mit dem Vertrauensniveau in jedem Stück festgehalten, sobald es auf die Waage kommt: Eine Regel, die nach dem Wert gewählt wird, entscheidet nichts. Der Befund steht bei jeder Regel; eine Regel fügt ein Urteil hinzu.",
  choices: {
    none: {
      name: "kein Urteil",
      risk: "Nur der Befund: was die Dichte ausschließt und was sie übrig lässt.",
    },
    simple: {
      name: "einfache Annahme",
      risk: "Angenommen innerhalb der Grenzen. An einer Grenze ist bis zur Hälfte des Angenommenen falsch.",
    },
    "guard-band": {
      name: "Sicherheitsabstand",
      risk: "Angenommen nur, wenn der Wert um den Sicherheitsabstand innerhalb liegt. Mit 1 U bei 95,45 % ist an einer Grenze höchstens 2,3 % des Angenommenen falsch; eine grobe Waage nimmt nichts an.",
    },
    "pass-and-conditional": {
      name: "angenommen und bedingt",
      risk: "Vier Antworten. Eine Annahme birgt mit 1 U höchstens 2,3 %, eine bedingte bis zur Hälfte.",
    },
  },
  multiple: "Breite des Sicherheitsabstands",
  multipleHint: "in erweiterten Unsicherheiten; üblich ist 1",
  multipleWrong: {
    what: "Die Breite des Sicherheitsabstands liegt außerhalb des Bereichs.",
    right: "Richtig: eine Zahl von 0,1 bis 3, etwa 1.",
    todo: "Bitte berichtigen und noch einmal behalten.",
  },
};
