import elementRows from "./data/elements.json" with { type: "json" };
import type { Metal } from "./metal.ts";
import { metalsOf } from "./metal-row.ts";

/** The elements, as a bench could meet them. Handbooks disagree in the third figure; low and high span what they print. */
export const elements: readonly Metal[] = metalsOf("elements.json", elementRows);
