import { bench, describe, expect } from "vitest";
import { screenedLot, secondsPerPress } from "./operator-time.ts";

const pieces = 20;
/** 240 pieces an hour. */
const secondsPerPiece = 15;

describe(`a lot of ${pieces} pieces on the simulated balance`, () => {
  bench(
    "240 pieces an hour: keys and waits leave the hands most of the 15 s a piece has",
    async () => {
      const times = await screenedLot(pieces);
      const mean = (of: (one: (typeof times)[number]) => number) =>
        times.reduce((sum, one) => sum + of(one), 0) / times.length;
      const keys = mean(({ presses }) => presses) * secondsPerPress;
      const [ticket, dry, immersed] = [mean((t) => t.ticketS), mean((t) => t.dryS), mean((t) => t.immersedS)];
      const whole = keys + ticket + dry + immersed;
      console.log(
        `${times.length} pieces: ${whole.toFixed(1)} s a piece = keys ${keys.toFixed(2)} s (${times[0]?.presses} presses) ` +
          `+ waits ${(ticket + dry + immersed).toFixed(2)} s (ticket ${ticket.toFixed(2)}, dry ${dry.toFixed(2)}, immersed and record ${immersed.toFixed(2)}); ` +
          `${(secondsPerPiece - whole).toFixed(1)} s of ${secondsPerPiece} are left to the hands`,
      );
      expect(whole).toBeLessThan(secondsPerPiece);
    },
    { iterations: 1, warmupIterations: 0, time: 0, warmupTime: 0, throws: true },
  );
});
