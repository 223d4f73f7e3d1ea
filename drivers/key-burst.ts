import type { LineReader } from "./reading.ts";

/** One key as a page hears it. */
export interface KeyStroke {
  key: string;
  atMs: number;
}

/** A balance that pretends to be a keyboard types faster than a person: gaps in ms, and least characters. */
export const burst = { longestGapMs: 35, leastCharacters: 4 };

/**
 * The text of a burst of keys that ends the given strokes, or null when a person typed them. Strokes of Enter or Tab
 * end a burst and do not belong to its text.
 */
export function burstText(strokes: readonly KeyStroke[]): string | null {
  let text = "";
  let before: KeyStroke | null = null;
  for (const stroke of strokes.toReversed()) {
    if (before && before.atMs - stroke.atMs > burst.longestGapMs) break;
    const ends = stroke.key === "Enter" || stroke.key === "Tab";
    if (ends && text !== "") break;
    if (!ends) text = stroke.key.length === 1 ? stroke.key + text : text;
    before = stroke;
  }
  return text.length >= burst.leastCharacters && /\d/.test(text) ? text : null;
}

export interface FocusedField {
  id: string;
  /** whether a weight belongs into it */
  takesWeight: boolean;
}

export type BurstVerdict = { field: string; text: string; unit: string | null } | { refused: string };

/**
 * Where a burst belongs: into the focused field if that takes a weight, else into the one field that waits for a
 * weight, else nowhere. The field that had the focus is to be put back as it was before the burst.
 */
export function placeBurst(
  text: string,
  focused: FocusedField,
  waiting: readonly FocusedField[],
  read: LineReader,
): BurstVerdict {
  const weight = weightIn(text, read);
  if (!weight)
    return {
      refused: `The balance typed "${text.trim()}", which is not understood as a weight. Nothing was entered.`,
    };
  if (focused.takesWeight) return { field: focused.id, ...weight };
  const [only, ...others] = waiting.filter(({ takesWeight }) => takesWeight);
  if (only && others.length === 0) return { field: only.id, ...weight };
  return {
    refused: `The balance typed "${text.trim()}" while another field had the focus, and ${only ? "several fields wait" : "no field waits"} for a weight. Nothing was entered: choose the field of the weight, then press the key of the balance again.`,
  };
}

/** A keyboard line often carries the bare number; the field it goes to knows its unit. */
function weightIn(text: string, read: LineReader): { text: string; unit: string | null } | null {
  const meaning = read(text);
  if (meaning && "reading" in meaning) return { text: meaning.reading.text, unit: meaning.reading.unit };
  const bare = read(`${text.trimEnd()} g`);
  const unitless = meaning && "event" in meaning && meaning.event.kind === "unit-missing";
  return unitless && bare && "reading" in bare ? { text: bare.reading.text, unit: null } : null;
}
