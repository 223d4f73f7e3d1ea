import { isCode } from "../messages/catalogue.ts";
import type { Locale } from "../messages/language.ts";
import { type Tell, tellerOf, tellId } from "../messages/tell.ts";

/** The guided checks of a bench, in the order a new bench makes them. */
export const checkKinds = [
  "check-weight",
  "zero-return",
  "reference",
  "trainee",
  "repeatability",
  "immersed-repeatability",
  "linearity",
  "eccentricity",
  "ice-point",
  "thermometer",
] as const;
export type CheckKind = (typeof checkKinds)[number];

/** One entry of a guided check. */
export interface GuideEntry {
  name: string;
  label: string;
  hint?: string;
  unit: "mass" | "celsius" | "number" | "none";
}

export interface Guide {
  title: string;
  why: string;
  steps: readonly string[];
  /** entries asked once */
  once: readonly GuideEntry[];
  /** readings asked in rows: each row has these entries, and a label of its own */
  rows: readonly string[];
  perRow: readonly GuideEntry[];
}

type Asked = readonly (readonly [name: string, unit: GuideEntry["unit"]])[];

const weights: Asked = [
  ["class", "none"],
  ["expanded", "mass"],
];
const reading: Asked = [["reading", "mass"]];
const weighed: Asked = [
  ["dry", "mass"],
  ["full", "mass"],
  ["wet", "mass"],
];

/** What each check asks, and how many rows it has. Numbers of repeats: common practice. */
const asked: Record<CheckKind, { once: Asked; rows: number; perRow: Asked }> = {
  "check-weight": { once: [...weights, ["stated", "mass"]], rows: 1, perRow: reading },
  "zero-return": {
    once: [],
    rows: 3,
    perRow: [
      ["before", "mass"],
      ["after", "mass"],
    ],
  },
  repeatability: { once: [], rows: 10, perRow: reading },
  "immersed-repeatability": { once: [], rows: 10, perRow: reading },
  linearity: {
    once: weights,
    rows: 12,
    perRow: [
      ["stated", "mass"],
      ["reading", "mass"],
    ],
  },
  eccentricity: { once: [], rows: 6, perRow: reading },
  "ice-point": { once: [], rows: 3, perRow: [["reading", "celsius"]] },
  thermometer: {
    once: [["referenceU", "celsius"]],
    rows: 3,
    perRow: [
      ["stated", "celsius"],
      ["reading", "celsius"],
    ],
  },
  reference: {
    once: [
      ["piece", "none"],
      ["stated", "number"],
      ["expanded", "number"],
      ["celsius", "celsius"],
    ],
    rows: 3,
    perRow: weighed,
  },
  trainee: {
    once: [
      ["trainee", "none"],
      ["piece", "none"],
      ["celsius", "celsius"],
    ],
    rows: 10,
    perRow: weighed,
  },
};

/** A guided check with its words in a language. */
export function guideOf(kind: CheckKind, locale: Locale = "en"): Guide {
  const t = tellerOf(locale);
  const { once, rows: count, perRow } = asked[kind];
  const named = ([name, unit]: Asked[number]): GuideEntry => {
    const [hint] = textsOf([`guide.${kind}.entries.${name}.hint`], t);
    return {
      name,
      unit,
      label: tellId(`guide.${kind}.entries`, `${name}.label`, locale),
      ...(hint === undefined ? {} : { hint }),
    };
  };
  const rows = textsOf(
    Array.from({ length: count }, (_, place) => `guide.${kind}.rows.${place + 1}`),
    t,
  );
  return {
    title: t(`guide.${kind}.title`),
    why: t(`guide.${kind}.why`),
    steps: textsOf(
      Array.from({ length: mostSteps }, (_, place) => `guide.${kind}.steps.${place + 1}`),
      t,
    ),
    once: once.map(named),
    rows: Array.from({ length: count }, (_, place) =>
      rows.length === count ? (rows[place] ?? "") : `${rows[0]} ${place + 1}`,
    ),
    perRow: perRow.map(named),
  };
}

const mostSteps = 9;

/** The texts of those codes that the catalogue has. */
const textsOf = (codes: readonly string[], t: Tell) => codes.filter(isCode).map((code) => t(code));

/** Name of an entry in the form that is sent: "reading-3", counted from 1; entries asked once keep their name. */
export function entryName(entry: GuideEntry, row?: number): string {
  return row === undefined ? entry.name : `${entry.name}-${row}`;
}
