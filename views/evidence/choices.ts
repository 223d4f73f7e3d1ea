import type { Code } from "../../calibration/message.ts";

/** What a code ends with, after a beginning that others share. */
type After<Begin extends string, C> = C extends `${Begin}.${infer End}` ? End : never;

/** A test beside density, by the name its messages have. */
export type TestKind = Exclude<After<"test.name", Code>, "density">;

/** What the forms of the tests offer. */
export interface TestChoices {
  /** in the order of the page, from harmless to marking */
  kinds: readonly { kind: TestKind; marks: boolean }[];
  colours: readonly After<"metal-page.colours", Code>[];
  /** how far the sound went, in thicknesses of the wall */
  paths: readonly (1 | 2 | 4)[];
}
