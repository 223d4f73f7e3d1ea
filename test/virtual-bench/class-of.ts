import type { Scenario } from "./scenario.ts";
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
