import type { SeededRandom } from "./seeded-random.ts";

/** Ways in which the next lines go wrong on their way. */
export type LineFault = "garbled" | "halved" | "doubled";

/** The bytes of one line after a fault. */
export function spoiled(line: Uint8Array, fault: LineFault, random: SeededRandom): Uint8Array {
  switch (fault) {
    case "garbled":
      return line.map((byte) => (random.uniform() < 0.4 ? random.whole(256) : byte));
    case "halved": {
      const cut = 1 + random.whole(line.length - 2);
      return random.uniform() < 0.5 ? line.slice(0, cut) : line.slice(cut);
    }
    case "doubled":
      return Uint8Array.from([...line, ...line]);
  }
}
