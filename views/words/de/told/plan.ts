import type { ToldPair } from "../../told-pair.ts";

/** Names that stand inside sentences not yet told by code. */
export const planNames: readonly ToldPair[] = [
  ["Density", "Dichte"],
  ["any", "beliebig"],
  ["Mass", "Masse"],
  ["Fineness", "Feingehalt"],
  ["gold", "Gold"],
  ["silver", "Silber"],
  ["yellow", "gelb"],
  ["pink", "rosa"],
  ["red", "rot"],
  ["green", "grün"],
];
