import type { z } from "zod";
import { Refusal } from "../../calibration/refusal.ts";
import { tell } from "../../views/messages/tell.ts";
import type { ComputeError } from "./contract.ts";

/** A path as a person writes it: dry.readings[0]. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === "number") return `${text}[${key}]`;
    return text === "" ? String(key) : `${text}.${String(key)}`;
  }, "");
}

/** The id of a line that may be anything, or null. */
export function idOf(line: unknown): string | null {
  if (typeof line !== "object" || line === null || !("id" in line)) return null;
  return typeof line.id === "string" ? line.id : null;
}

/** The first complaint of the schema, in the contract's words. */
export function fromSchema(id: string | null, error: z.ZodError): ComputeError {
  const issue = error.issues[0]!;
  if (issue.code === "unrecognized_keys") {
    const at = pathText([...issue.path, issue.keys[0]!]);
    const said = issue.keys.map((key) => `"${key}"`).join(", ");
    return {
      id,
      error: { at, message: `The key ${said} is not known here. Check its spelling, or leave it out.` },
    };
  }
  return { id, error: { at: pathText(issue.path), message: issue.message } };
}

/** A refusal of the metrology (RangeError) in the contract's words; anything else is not ours and is thrown on. */
export function fromMetrology(id: string, error: unknown): ComputeError {
  if (error instanceof Refusal) return { id, error: { at: error.at ?? "", message: tell(error, "en") } };
  if (!(error instanceof RangeError)) throw error;
  return { id, error: { at: placeOf(error), message: error.message } };
}

function placeOf(error: RangeError): string {
  if (error.message.startsWith("Water at")) return "liquid.temperature_c";
  if (/^(Air|Height)/.test(error.message)) return "air";
  if (error.message.startsWith("A decision rule")) return "decision_rule";
  return "";
}
