import { type Noise, usualNoise } from "./noise.ts";
import type { Response } from "./response.ts";
import type { Ring } from "./ring.ts";

/** What was learned of the display of a bench: how it trembles, and how it comes to rest. */
export interface KnownDisplay {
  noises: readonly Noise[];
  response?: Response | undefined;
  ring?: Ring | undefined;
}

/** A display of which nothing was seen. */
export const unknownDisplay: KnownDisplay = { noises: usualNoise };
