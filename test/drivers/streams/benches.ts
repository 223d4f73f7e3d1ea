import type { Bench } from "./stream.ts";

/** A display of 0.1 mg with white noise of 0.4 d at five lines a second. Invented. */
export const clean: Bench = {
  stepMg: 0.1,
  whiteMg: 0.04,
  mechanism: { tauSeconds: 0.35 },
  pace: { perSecond: 5 },
};

/** The same with another property. */
export const benches = {
  clean,
  quiet: { ...clean, whiteMg: 0.01 },
  ringing: { ...clean, mechanism: { tauSeconds: 0.35, ringHz: 1.1 } },
  marked: { ...clean, mark: { seconds: 1, steps: 1 } },
  looseMark: { ...clean, mark: { seconds: 1, steps: 4 } },
  draught: { ...clean, draught: { mg: 0.1, tauSeconds: 2 } },
  fast: { ...clean, pace: { perSecond: 20 } },
  slow: { ...clean, pace: { perSecond: 1 } },
  packets: { ...clean, pace: { perSecond: 5, packet: 5 } },
  irregular: { ...clean, pace: { perSecond: 5, jitter: 0.5, lostShare: 0.15, doubledShare: 0.1 } },
  kitchen: { ...clean, stepMg: 100, whiteMg: 10 },
  byFives: { ...clean, stepMg: 50, whiteMg: 10 },
} satisfies Record<string, Bench>;
