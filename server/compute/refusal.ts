import type { z } from "zod";
import type { Message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";

/** Why a request could not be computed: at which key, and what would be right; text where a schema worded it. */
export interface Refused {
  id: string | null;
  error: { at: string; message: Message | string };
}

/** A path as a person writes it: dry.readings[0]. */
function pathText(path: readonly PropertyKey[]): string {
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
export function fromSchema(id: string | null, error: z.ZodError): Refused {
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

/** A refusal at its key of the request; an error of the program is thrown on. */
export function fromMetrology(id: string, error: unknown): Refused {
  if (error instanceof Refusal) {
    const { code, params, at = "" } = error;
    return { id, error: { at, message: { code, params } } };
  }
  if (error instanceof RangeError && error.message.startsWith("No metal"))
    return { id, error: { at: "claim", message: error.message } };
  throw error;
}
