import type { Chance } from "./chance.ts";

/** Ways in which the next lines go wrong on their way. */
export type LineFault = "garbled" | "halved" | "doubled";

/** The bytes of one line after a fault has had its way with them. */
export function spoiled(line: Uint8Array, fault: LineFault, chance: Chance): Uint8Array {
  switch (fault) {
    case "garbled":
      return line.map((byte) => (chance.uniform() < 0.4 ? chance.whole(256) : byte));
    case "halved": {
      const cut = 1 + chance.whole(line.length - 2);
      return chance.uniform() < 0.5 ? line.slice(0, cut) : line.slice(cut);
    }
    case "doubled":
      return Uint8Array.from([...line, ...line]);
  }
}
