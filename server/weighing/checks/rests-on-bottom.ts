import { densityWords, massWords } from "../../checks/amounts.ts";
import { displacedForImmersed } from "./displaced-for-immersed.ts";
import { floats } from "./floats.ts";
import { nothingOnHook } from "./nothing-on-hook.ts";
import { soFar, solidMetal } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** Lighter than any solid metal: the floor of the beaker, or its wall, carries part or all of the piece. */
export const restsOnBottom: Watch = {
  kind: "rests-on-bottom",
  look(situation) {
    const now = soFar(situation);
    if (now === undefined || now.dryGrams <= 0 || now.displacedGrams <= 0) return undefined;
    if (situation.method === "flask" || now.gPerCm3 >= solidMetal.low) return undefined;
    if ([floats, nothingOnHook, displacedForImmersed].some((watch) => watch.look(situation) !== undefined))
      return undefined;
    if (now.gPerCm3 < 0.9) return undefined;
    const whole = now.displacedGrams > 0.97 * now.dryGrams;
    return {
      says: whole
        ? `The beaker rose by ${massWords(now.displacedGrams)}, the whole weight of the piece: reads like a piece resting on the bottom.`
        : `The piece would have ${densityWords(now.gPerCm3)}, lighter than any solid metal: reads like a piece that touches.`,
      ask: "Does the piece hang free of the wall and the bottom? Is it solid metal?",
      remedies: [
        {
          says: "Lift the piece clear, wait until it hangs still, and read again.",
          offer: { do: "repeat", role: "wet" },
        },
        {
          says: "A hollow or filled piece, a stone, pearl or amber can be this light: do not leave it in the water.",
        },
      ],
      blocking: true,
    };
  },
};
