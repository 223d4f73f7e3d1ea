import type { Profile } from "../../drivers/learning/profile.ts";

/** Invented: "w?" or "w." before the number, its meaning learned; a line of dashes between; ended by silence. */
export const profile = (ending: Profile["ending"]): Profile => ({
  format: 1,
  name: "invented balance",
  learnedAt: null,
  parity: "none",
  ending,
  check: null,
  blockLines: 1,
  unit: { unit: "g", from: "line" },
  weight: [
    { is: "text", text: "w" },
    {
      is: "mark",
      marks: [
        { text: "?", means: "moving", unit: false },
        { text: ".", means: "steady", unit: false },
      ],
    },
    {
      is: "number",
      width: 10,
      align: "right",
      padLeast: 1,
      padMost: 8,
      sign: "beside-digits",
      signAt: 0,
      plus: "never",
      decimalMark: ".",
      grouping: "none",
      places: [2],
      impliedPlaces: null,
      digits: null,
      auxiliary: false,
    },
    { is: "text", text: "g" },
  ],
  others: [{ kind: "not-a-weight", line: [{ is: "text", text: "====" }] }],
  cadence: { byItself: true, linesPerSecond: 5 },
  findings: [],
  samples: [
    { raw: "w.     31.10g\\r\\n", reading: { text: "31.10", unit: "g", steady: "steady" }, event: null },
  ],
});
