import { type Code, type Message, message } from "../../calibration/message.ts";
import type { Comma } from "../number.ts";
import type { LineReader } from "../reading.ts";

export interface ShapeSettings {
  /** what a comma means on this balance */
  comma: Comma;
  /** decimals of the display, for lines that leave the point out; only the owner or a learned profile knows them */
  impliedDecimals?: number;
}

type IdOf<C> = C extends `line-format.${infer Id}` ? Id : never;

/** The form of a line: the name of its file and of its sample lines. */
export type ShapeId = Exclude<IdOf<Code>, "unknown">;

/** A manner of writing a line, named by its form. It answers null to every line that is not of its form. */
export interface Shape {
  id: ShapeId;
  /** a reader for one connection */
  reader(settings: ShapeSettings): LineReader;
}

/** What the lines of this form look like, for the owner who chooses it. */
export function shapeMessage({ id }: Shape): Message {
  return message(`line-format.${id}`);
}
