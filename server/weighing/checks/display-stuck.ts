import type { Situation, WatchedReading } from "./situation.ts";
import type { Watch } from "./watch.ts";

/**
 * The display gave the same line, to the last sign, from one capture to the next. A piece that is lifted and laid or
 * hung anew moves it, so either it was not lifted, and the two readings are one, or the display or its cable hangs.
 */
export const displayStuck: Watch = {
  kind: "display-stuck",
  look(situation) {
    const stuck = all(situation).find(({ unmoved }) => unmoved);
    if (stuck === undefined) return undefined;
    return {
      says: `The display has stood at ${stuck.text} ${stuck.unit} without the least change since the reading before.`,
      ask: "Was the piece lifted off and put back in between?",
      remedies: [
        {
          says: "If it was: touch the pan. A display that does not move then is stuck; switch the balance off and on.",
        },
        { says: "If it was not: set this reading aside. One load read twice is one reading." },
      ],
      blocking: false,
    };
  },
};

function all({ dry, wet, flaskFull, dryAfter, zeros }: Situation): WatchedReading[] {
  return [dry, wet, flaskFull ?? [], dryAfter ?? [], zeros ?? []].flat();
}
