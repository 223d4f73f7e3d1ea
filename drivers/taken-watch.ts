import type { LoadReading } from "../calibration/stable-reading/load-reading.ts";
import type { StableLine } from "../calibration/stable-reading/points.ts";

/** Watches the load that was taken last until it is lifted. */
export interface TakenWatch {
  begin(load: LoadReading): void;
  end(): void;
  /** whether the load that was taken last still lies there */
  readonly holds: boolean;
  hear(line: StableLine): void;
  /** calls back once with g when the display moves on while the load stays; returns the function that ends it */
  onMoved(listener: (grams: number) => void): () => void;
}

export function createTakenWatch(): TakenWatch {
  let watched: LoadReading | undefined;
  const listeners = new Set<(grams: number) => void>();
  return {
    begin(load) {
      watched = load;
    },
    end() {
      watched = undefined;
    },
    get holds() {
      return watched !== undefined;
    },
    hear(line) {
      const heard = watched?.hear(line);
      if (!heard) return;
      const { judgement, next } = heard;
      if (next) watched = undefined;
      if (judgement.state !== "after" || judgement.moved === undefined) return;
      watched = undefined;
      for (const listener of listeners) listener(judgement.moved);
    },
    onMoved(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
