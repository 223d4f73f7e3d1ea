import type { ToldPair } from "../../told.ts";
import { refusals } from "./refusals.ts";

/** Every sentence that the bench tells from behind its pages, in German. */
export const germanBook: readonly ToldPair[] = [...refusals];
