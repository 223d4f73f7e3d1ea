import type { ComponentChildren } from "preact";
import type { Code } from "../../calibration/message.ts";
import type { Tell } from "../messages/tell.ts";
import type { Sentence } from "../sentence.tsx";

/** Every way to weigh, by the name its messages have: `method.NAME.name` and the like. */
export type MethodName = {
  [Known in Code]: Known extends `method.${infer Name}.name` ? Name : never;
}[Code];

/** What a reading is of, by the name its messages have. */
export type Role = { [Known in Code]: Known extends `bench.roles.${infer Name}` ? Name : never }[Code];

/** What the form of a method shows: entries by field, as typed or as kept, and what was refused. */
export interface MethodFormView {
  values: Readonly<Record<string, string>>;
  refused?: { field: string; message: Sentence } | undefined;
}

/** How a method is drawn; its words are messages. */
export interface MethodView {
  /** line drawing within 260 × 190 */
  Drawing(parts: { t: Tell }): ComponentChildren;
  /** entries of the form of its own, where it has one */
  Form?(form: MethodFormView): ComponentChildren;
  /** what it may harm, or where it misleads */
  cautions?: readonly Code[];
}
