import type { Scenario } from "./scenario.ts";
import { statedFalsely } from "./stated-falsely.ts";
import { statedTruly } from "./stated-truly.ts";
import type { StatedCheck } from "./underhook.ts";

/** One row of the coverage table. */
export interface ClassOf {
  name: string;
  scenario: Scenario;
  /** a warning that names this trouble, where it is one that every such weighing gets */
  told?(check: StatedCheck): boolean;
  /** why a class misses its aim, or may */
  reason?: string;
}

/** A class with its group and a seed of its own. */
export interface Row extends ClassOf {
  group: "truly" | "falsely";
  seed: number;
}

const hash = (text: string) =>
  [...text].reduce((h, c) => Math.imul(h ^ c.charCodeAt(0), 16777619), 2166136261);

/** All classes; each draws from a seed made of its name, so that adding one changes no other. */
export const rows: readonly Row[] = [
  ...statedTruly.map((one) => ({ ...one, group: "truly" as const, seed: hash(one.name) })),
  ...statedFalsely.map((one) => ({ ...one, group: "falsely" as const, seed: hash(one.name) })),
];
