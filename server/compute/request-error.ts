import type { z } from "zod";
import { type Code, type Message, message, type Params } from "../../calibration/message.ts";

/** A wrong entry of a request as zod finds it, with what stands there. */
type Issue = z.core.$ZodIssue;

/** A code that a schema of the contract gives as its error, to be told by `requestError` with what stands there. */
export const errorCode = (code: RequestCode): string => code;

export type RequestCode = Code & `compute.request.${string}`;

/** What a request lacks or holds wrongly: what stands there, and what would be right. */
export function requestError(issue: Issue): Message {
  if (isOwn(issue.message) && issue.input !== undefined)
    return message(issue.message, { given: shortly(issue.input) });
  switch (issue.code) {
    case "unrecognized_keys":
      return message("compute.key.unknown", { count: issue.keys.length, keys: issue.keys });
    case "invalid_type":
      return about("compute.key.type", issue, { expected: issue.expected });
    case "too_small":
      return about("compute.key.small", issue, {
        bound: issue.inclusive === false ? "above" : "from",
        least: Number(issue.minimum),
        origin: issue.origin,
      });
    case "too_big":
      return about("compute.key.big", issue, {
        bound: issue.inclusive === false ? "below" : "to",
        most: Number(issue.maximum),
        origin: issue.origin,
      });
    case "invalid_value":
      return about(choice, issue, { options: { anyOf: issue.values.map(json) } });
    case "invalid_union":
      return issue.discriminator === undefined ? about("compute.key.form", issue, {}) : chosenBy(issue);
    default:
      return about("compute.key.form", issue, {});
  }
}

const choice = "compute.key.choice";

const isOwn = (text: string): text is Code => text.startsWith("compute.request.");

function about(code: Code, { path, input }: Pick<Issue, "path" | "input">, params: Params): Message {
  const last = path.at(-1);
  const place = last === undefined ? "whole" : typeof last === "number" ? "entry" : "key";
  return message(code, {
    place,
    key: typeof last === "number" ? `${last + 1}` : String(last ?? ""),
    stands: input === undefined ? "nothing" : "something",
    given: shortly(input),
    ...params,
  });
}

/** A union told apart by one key, such as the method: what the key holds, and what it may hold. */
function chosenBy(issue: z.core.$ZodIssueInvalidUnion): Message {
  const { discriminator: key = "", input: holder } = issue;
  const input = typeof holder === "object" && holder !== null ? Reflect.get(holder, key) : undefined;
  const options = "options" in issue && Array.isArray(issue.options) ? issue.options.map(json) : [];
  return about(choice, { path: [key], input }, { options: { anyOf: options } });
}

const json = (value: unknown) => JSON.stringify(value) ?? String(value);

function shortly(value: unknown): string {
  const text = json(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
