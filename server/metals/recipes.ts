import copperAlloys from "./data/copper-alloys.json" with { type: "json" };
import coredAndPlated from "./data/cored-and-plated.json" with { type: "json" };
import gold from "./data/gold.json" with { type: "json" };
import heavy from "./data/heavy.json" with { type: "json" };
import leadTinZinc from "./data/lead-tin-zinc.json" with { type: "json" };
import palladium from "./data/palladium.json" with { type: "json" };
import platinum from "./data/platinum.json" with { type: "json" };
import silver from "./data/silver.json" with { type: "json" };
import steel from "./data/steel.json" with { type: "json" };
import whiteAlloys from "./data/white-alloys.json" with { type: "json" };
import { elements } from "./elements.ts";
import type { Metal } from "./metal.ts";
import { metalsOf } from "./metal-row.ts";
import { recipeBand } from "./recipe-band.ts";

/** Every row of the data files: precious metals, base metals, heavy metals, pieces of two, elements. */
export const recipes: readonly Metal[] = [
  ...metalsOf("gold.json", gold, recipeBand),
  ...metalsOf("silver.json", silver, recipeBand),
  ...metalsOf("platinum.json", platinum, recipeBand),
  ...metalsOf("palladium.json", palladium, recipeBand),
  ...metalsOf("copper-alloys.json", copperAlloys),
  ...metalsOf("white-alloys.json", whiteAlloys),
  ...metalsOf("lead-tin-zinc.json", leadTinZinc),
  ...metalsOf("steel.json", steel),
  ...metalsOf("heavy.json", heavy),
  ...metalsOf("cored-and-plated.json", coredAndPlated),
  ...elements,
];
