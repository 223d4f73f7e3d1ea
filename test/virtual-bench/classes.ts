import type { Row } from "./class-of.ts";
import { statedFalsely } from "./stated-falsely.ts";
import { statedTruly } from "./stated-truly.ts";

const hash = (text: string) =>
  [...text].reduce((h, c) => Math.imul(h ^ c.charCodeAt(0), 16777619), 2166136261);

/** All classes; each draws from a seed made of its name, so that adding one changes no other. */
export const rows: readonly Row[] = [
  ...statedTruly.map((one) => ({ ...one, group: "truly" as const, seed: hash(one.name) })),
  ...statedFalsely.map((one) => ({ ...one, group: "falsely" as const, seed: hash(one.name) })),
];
