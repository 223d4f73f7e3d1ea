import type { Comma } from "../number.ts";
import type { LineReader } from "../reading.ts";

export interface ShapeSettings {
  /** what a comma means on this balance */
  comma: Comma;
  /** decimals of the display, for lines that leave the point out; only the owner or a learned profile knows them */
  impliedDecimals?: number;
}

/** A manner of writing a line, named by its form. It answers null to every line that is not of its form. */
export interface Shape {
  /** the name of its file and of its sample lines */
  id: string;
  /** for the owner who chooses it: what the lines look like */
  says: string;
  /** a reader for one connection */
  reader(settings: ShapeSettings): LineReader;
}
