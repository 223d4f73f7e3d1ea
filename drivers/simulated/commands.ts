import type { MassUnit } from "../../calibration/units.ts";
import type { Balance } from "../device.ts";
import type { SimulatedPiece } from "./load.ts";

/** A balance that weighs invented pieces, and whose cable, display and owner can be told to misbehave. */
export interface SimulatedBalance extends Balance {
  /** the piece lies on the pan, dry */
  put(piece: SimulatedPiece): void;
  /** the hanger hangs from the balance, immersed and empty */
  emptyHanger(): void;
  /** the piece hangs from the balance, immersed */
  hang(piece: SimulatedPiece): void;
  /** the beaker of liquid stands on the pan, nothing in it */
  beaker(): void;
  /** the piece hangs from a stand into the beaker on the pan */
  immerse(piece: SimulatedPiece): void;
  /** the piece in the beaker slips and rests on its bottom */
  drop(): void;
  /** the piece is taken away; hanger or beaker stays */
  lift(): void;
  /** hanger and beaker are taken away too */
  clear(): void;
  /** someone presses the zero key on the balance itself */
  zero(): void;
  /** bubbles cling to the immersed piece and lift it by so many mg */
  bubbles(mg: number): void;
  /** someone bumps the table: the display stays off by so many g */
  bump(grams: number): void;
  unitChange(unit: MassUnit): void;
  /** far too much on the pan, until it is relieved */
  overload(): void;
  relieve(): void;
  unplug(): void;
  replug(): void;
  /** another, coarser balance is plugged into the same socket */
  replugOther(): void;
  /** switched off with the cable in: nothing comes, nothing is lost */
  powerOff(): void;
  powerOn(): void;
  /** the line goes quiet until `thaw` */
  freeze(): void;
  /** the display keeps sending one old value until `thaw` */
  stick(): void;
  thaw(): void;
  /** so many lines arrive with wrong bytes */
  garble(lines: number): void;
  /** so many lines lose one end */
  halve(lines: number): void;
  /** so many lines come twice */
  double(lines: number): void;
  /** sends a line of its own making, such as a low battery */
  say(line: string): void;
}
