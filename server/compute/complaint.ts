import type { z } from "zod";

const kinds: Record<string, string> = {
  number: "a number",
  int: "a whole number",
  string: "text in quotes",
  boolean: "true or false",
  array: "a list in square brackets",
  object: "an object in braces",
};

/**
 * What a request lacks or holds wrongly, for the complaints the contract words nowhere itself: what stands there, and
 * what would be right. Goes into zod as the error map of one parse; undefined leaves zod's own words.
 */
export function complaint(issue: z.core.$ZodRawIssue): string | undefined {
  const stands = standing(nameOf(issue.path), issue.input);
  switch (issue.code) {
    case "invalid_type":
      return `${stands}. It must be ${kinds[issue.expected] ?? issue.expected}.`;
    case "too_small":
      return `${stands}. It must be ${issue.inclusive === false ? "greater than" : "at least"} ${issue.minimum}${of(issue.origin)}.`;
    case "too_big":
      return `${stands}. It must be ${issue.inclusive === false ? "less than" : "at most"} ${issue.maximum}${of(issue.origin)}.`;
    case "invalid_value":
      return `${stands}. It must be one of: ${issue.values.map((value) => JSON.stringify(value)).join(", ")}.`;
    case "invalid_union":
      return issue.discriminator === undefined ? undefined : chosenBy(issue.discriminator, issue);
    default:
      return undefined;
  }
}

/** A union told apart by one key, such as the method: what the key holds, and what it may hold. */
function chosenBy(key: string, issue: z.core.$ZodRawIssue<z.core.$ZodIssueInvalidUnion>): string {
  const holder = issue.input;
  const given = typeof holder === "object" && holder !== null ? Reflect.get(holder, key) : undefined;
  const options = Array.isArray(issue.options) ? issue.options.map((option) => JSON.stringify(option)) : [];
  return `${standing(`"${key}"`, given)}. It must be one of: ${options.join(", ")}.`;
}

function standing(name: string, given: unknown): string {
  return given === undefined ? `${name} is missing` : `${name} is ${shortly(given)}`;
}

/** The key complained of as the request writes it; a place in a list is told by its list. */
function nameOf(path: readonly PropertyKey[] | undefined): string {
  const last = path?.at(-1);
  if (last === undefined) return "What was sent";
  return typeof last === "number" ? `Entry ${last + 1}` : `"${String(last)}"`;
}

function shortly(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

function of(origin: string): string {
  if (origin === "array") return " entries long";
  return origin === "string" ? " characters long" : "";
}
