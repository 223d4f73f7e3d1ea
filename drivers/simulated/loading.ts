import type { SimulatedBalance } from "./commands.ts";
import { type Arrangement, loadGrams, type Surroundings } from "./load.ts";

/** What a person does at a balance, whatever its cable does. */
export type LoadActions = Pick<
  SimulatedBalance,
  | "put"
  | "emptyHanger"
  | "hang"
  | "beaker"
  | "immerse"
  | "drop"
  | "lift"
  | "clear"
  | "zero"
  | "bubbles"
  | "bump"
  | "overload"
  | "relieve"
>;

export interface Loading {
  actions: LoadActions;
  /** what the zero key has taken off, g */
  zeroGrams(): number;
}

/** Everything that stands on, hangs from or leans on the balance; tells the load, g, whenever it changes. */
export function createLoading(
  around: Surroundings,
  capacityGrams: number,
  loaded: (grams: number) => void,
): Loading {
  let arrangement: Arrangement = { on: "nothing" };
  let zeroGrams = 0;
  let bumpGrams = 0;
  let leaningGrams = 0;
  const total = () => loadGrams(arrangement, around) + bumpGrams + leaningGrams;
  function arrange(next: Arrangement): void {
    arrangement = next;
    loaded(total());
  }
  return {
    zeroGrams: () => zeroGrams,
    actions: {
      put: (piece) => arrange({ on: "pan", piece }),
      emptyHanger: () => arrange({ on: "hanger", piece: null }),
      hang: (piece) => arrange({ on: "hanger", piece }),
      beaker: () => arrange({ on: "beaker", piece: null, touching: false }),
      immerse: (piece) => arrange({ on: "beaker", piece, touching: false }),
      drop() {
        if (arrangement.on === "beaker") arrange({ ...arrangement, touching: true });
      },
      lift() {
        if (arrangement.on === "hanger") arrange({ on: "hanger", piece: null });
        else if (arrangement.on === "beaker") arrange({ on: "beaker", piece: null, touching: false });
        else arrange({ on: "nothing" });
      },
      clear() {
        leaningGrams = 0;
        arrange({ on: "nothing" });
      },
      zero() {
        zeroGrams = total();
      },
      bubbles(mg) {
        around.bubblesMg = mg;
        loaded(total());
      },
      bump(grams) {
        bumpGrams += grams;
        loaded(total());
      },
      overload() {
        leaningGrams = 2 * capacityGrams;
        loaded(total());
      },
      relieve() {
        leaningGrams = 0;
        loaded(total());
      },
    },
  };
}
