import type { Code, Message, Params } from "./message.ts";

/**
 * Something asked for that is not done, with the reason as a message. `at` names what it is about: the field of a form,
 * or the key of a request such as "dry.readings[0]". An error of the program is never one of these.
 */
export class Refusal extends Error implements Message {
  readonly code: Code;
  readonly params: Params;
  readonly at: string | undefined;

  constructor(code: Code, params: Params = {}, at?: string) {
    super(`${code} ${JSON.stringify(params)}`);
    this.name = "Refusal";
    this.code = code;
    this.params = params;
    this.at = at;
  }
}
