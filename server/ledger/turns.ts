import { setImmediate as nextTurn } from "node:timers/promises";

/** Long work: where it tells how much of it was done so far, and what ends it early. */
export interface Steps {
  onProgress?: (seen: number) => void;
  signal?: AbortSignal;
}

/** Work goes on for so long at most before whatever else waits has its turn: a line of a balance above all, ms. */
const longestMs = 15;

/** Gives the other work of this process its turn whenever some milliseconds have gone by since it had one. */
class Turns {
  #sinceMs = performance.now();

  async due(): Promise<void> {
    if (performance.now() - this.#sinceMs < longestMs) return;
    await nextTurn();
    this.#sinceMs = performance.now();
  }
}

/** The same things one after the other; between them other work has its turn. */
export async function* inTurns<T>(things: Iterable<T>): AsyncGenerator<T> {
  const turns = new Turns();
  for (const thing of things) {
    yield thing;
    await turns.due();
  }
}
