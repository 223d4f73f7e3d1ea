import type { SimulatedBalance } from "../../drivers/simulated-balance.ts";
import { methods } from "../methods/index.ts";
import { type DemoPiece, demoPieces } from "./pieces.ts";

/** What hands do at the simulated balance, always with the zero that belongs to it. */
export interface DemoSimulator {
  /** takes the piece of this id into the hand; undefined when there is none */
  choose(id: string): DemoPiece | undefined;
  /** takes the piece of this ticket into the hand, if it is another than the one held */
  chooseByTicket(ticket: string): void;
  layOnPan(): void;
  hangInWater(): void;
  takeOff(): void;
}

/** A hand takes so long from the pan to the water, ms. */
export const handMs = 1500;

/** An invented piece for a ticket that names none, the same each time. */
function anyPiece(ticket: string): DemoPiece | undefined {
  const sum = [...ticket].reduce((total, letter) => total + letter.charCodeAt(0), 0);
  return demoPieces[sum % demoPieces.length];
}

export function createDemoSimulator(balance: SimulatedBalance): DemoSimulator {
  let piece: DemoPiece | undefined;
  let onTheWay: NodeJS.Timeout | undefined;
  const weighed = (it: DemoPiece) => ({
    name: it.ticket,
    massGrams: it.massGrams,
    densityGPerCm3: it.trueDensityGPerCm3,
  });
  return {
    choose(id) {
      clearTimeout(onTheWay);
      piece = demoPieces.find((known) => known.id === id);
      balance.clear();
      balance.zero();
      return piece;
    },
    chooseByTicket(ticket) {
      piece = demoPieces.find((known) => known.ticket === ticket) ?? anyPiece(ticket);
    },
    layOnPan() {
      clearTimeout(onTheWay);
      balance.clear();
      balance.zero();
      if (piece) balance.put(weighed(piece));
    },
    hangInWater() {
      clearTimeout(onTheWay);
      const hasVessel = piece !== undefined && methods[piece.method].zeros === "of-vessel";
      if (hasVessel) balance.beaker();
      else balance.emptyHanger();
      balance.zero();
      if (!piece) return;
      const held = weighed(piece);
      onTheWay = setTimeout(() => (hasVessel ? balance.immerse(held) : balance.hang(held)), handMs);
      onTheWay.unref();
    },
    takeOff() {
      clearTimeout(onTheWay);
      balance.clear();
      balance.zero();
    },
  };
}
