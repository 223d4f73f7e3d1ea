import type { z } from "zod";
import { type Message, message } from "../../calibration/message.ts";

/** What is wrong with a file that an owner gives, with its place: a message of code "metal.file.fault". */
export function faultsIn({ issues }: z.ZodError): Message[] {
  return issues.map((issue) => faultAt(issue.path.join(".") || "file", saidOf(issue)));
}

export const faultAt = (place: string, sentence: Message): Message =>
  message("metal.file.fault", { place, message: sentence });

/** Gives a check of the schema its message: `.refine(check, saying("metal.own.sum"))`. */
export const saying = (sentence: Message) => ({ params: { message: sentence } });

type Issue = z.core.$ZodIssue;

function saidOf(issue: Issue): Message {
  switch (issue.code) {
    case "custom":
      return isMessage(issue.params?.message) ? issue.params.message : message("metal.file.wrong");
    case "invalid_type":
      return message("metal.file.type", { expected: issue.expected });
    case "too_small":
      return message("metal.file.at-least", { least: Number(issue.minimum) });
    case "too_big":
      return message("metal.file.at-most", { most: Number(issue.maximum) });
    case "unrecognized_keys":
      return message("metal.file.unknown-key", { keys: issue.keys });
    case "invalid_value":
      return message("metal.file.one-of", { values: { anyOf: issue.values.map(String) } });
    default:
      return message("metal.file.wrong");
  }
}

const isMessage = (value: unknown): value is Message =>
  typeof value === "object" && value !== null && "code" in value;
