import type { z } from "zod";
import type { Message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { requestError } from "./request-error.ts";

/** Why a request could not be computed: at which key, and what would be right. */
export interface Refused {
  id: string | null;
  error: { at: string; message: Message };
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

/** The first complaint of the schema; the request was read with `reportInput`, so that it tells what stands there. */
export function fromSchema(id: string | null, error: z.ZodError): Refused {
  const issue = error.issues[0]!;
  const path = issue.code === "unrecognized_keys" ? [...issue.path, issue.keys[0]!] : issue.path;
  return { id, error: { at: pathText(path), message: requestError(issue) } };
}

/** A refusal at its key of the request; an error of the program is thrown on. */
export function fromMetrology(id: string, error: unknown): Refused {
  if (!(error instanceof Refusal)) throw error;
  const { code, params, at = "" } = error;
  return { id, error: { at, message: { code, params } } };
}
