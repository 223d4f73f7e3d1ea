import { type Noise, usualNoise } from "./noise.ts";
import type { Response } from "./response.ts";

/** What was learned of the display of a bench: how it trembles, and how it comes to rest. */
export interface KnownDisplay {
  noises: readonly Noise[];
  response?: Response | undefined;
  /** what its swings leave that follow no exponential, over what is expected of a bench of which nothing is known */
  roughness?: number | undefined;
}

/** A display of which nothing was seen. */
export const unknownDisplay: KnownDisplay = { noises: usualNoise };
