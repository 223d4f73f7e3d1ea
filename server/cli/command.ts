import { type ParseArgsConfig, parseArgs } from "node:util";
import type { Code, Params } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { type Locale, locales } from "../../views/messages/language.ts";
import { type Tell, tell, tellerOf } from "../../views/messages/tell.ts";
import { LedgerError } from "../ledger/error.ts";
import { languageAsked, languageIn } from "./language.ts";

/** A command that the catalogues have a help for. */
export type CommandName = { [Known in Code]: Known extends `cli.${infer Name}.help` ? Name : never }[Code];

type Options = NonNullable<ParseArgsConfig["options"]>;

const ofEveryCommand = { lang: { type: "string" }, help: { type: "boolean", short: "h" } } as const;

/** What a command takes, and what it does. */
interface Usage<Own extends Options> {
  name: CommandName;
  options: Own;
  /** whether anything may stand without an option in front of it */
  takesArguments: boolean;
  /** fills what its help says of this program */
  helped?: Params;
}

/** What was asked for, and the voice to answer with. */
export interface Asked<Own extends Options> {
  values: ReturnType<typeof parsed<Own>>["values"];
  positionals: string[];
  say: Voice;
}

/** Says messages in the language that was asked for: on standard output, and what went wrong on standard error. */
export interface Voice {
  locale: Locale;
  tell: Tell;
  out(code: Code, params?: Params): void;
  error(code: Code, params?: Params): void;
}

/**
 * Runs a command: `--help` and wrong use (2) are answered here, and so is what is refused: 1 for a damaged ledger, else 2.
 * An error of the program stays one.
 */
export async function command<const Own extends Options>(
  { name, options, takesArguments, helped }: Usage<Own>,
  args: string[],
  work: (asked: Asked<Own>) => Promise<number>,
): Promise<number> {
  let say = voiceIn(languageIn(args));
  try {
    const { values, positionals } = parsed(args, options, takesArguments);
    const { lang, help } = values as { lang?: string; help?: boolean };
    say = voiceIn(languageAsked(lang));
    if (help) {
      say.out(`cli.${name}.help`, { languages: { anyOf: locales }, ...helped });
      return 0;
    }
    return await work({ values, positionals, say });
  } catch (cause) {
    const refused = refusedBy(cause);
    if (!refused) throw cause;
    say.error("cli.failed", { command: name, message: refused });
    if (refused instanceof Refusal) say.error("cli.hint", { command: name });
    return refused instanceof LedgerError && refused.kind === "damaged" ? 1 : 2;
  }
}

/** What a person can mend: what was refused, and what the system did not allow. */
function refusedBy(cause: unknown): Refusal | LedgerError | undefined {
  if (cause instanceof Refusal || cause instanceof LedgerError) return cause;
  const ofSystem = cause instanceof Error && "syscall" in cause;
  return ofSystem ? new Refusal("cli.system-error", { reason: cause.message }) : undefined;
}

function voiceIn(locale: Locale): Voice {
  return {
    locale,
    tell: tellerOf(locale),
    out: (code, params = {}) => console.log(tell({ code, params }, locale)),
    error: (code, params = {}) => console.error(tell({ code, params }, locale)),
  };
}

/** The arguments, each known and whole. Throws Refusal naming the first that is not. */
function parsed<const Own extends Options>(args: string[], own: Own, allowPositionals: boolean) {
  const options = { ...own, ...ofEveryCommand };
  const { tokens } = parseArgs({ args, options, strict: false, allowPositionals: true, tokens: true });
  for (const token of tokens) {
    if (token.kind === "positional" && !allowPositionals)
      throw new Refusal("cli.argument-unknown", { argument: token.value });
    if (token.kind === "option") mustFit(token, (options as Options)[token.name]);
  }
  return parseArgs({ args, options, allowPositionals });
}

interface GivenOption {
  rawName: string;
  value: string | undefined;
  inlineValue: boolean | undefined;
}

function mustFit(
  { rawName: option, value, inlineValue }: GivenOption,
  known: Options[string] | undefined,
): void {
  if (!known) throw new Refusal("cli.option-unknown", { option });
  if (known.type === "boolean") {
    if (value !== undefined) throw new Refusal("cli.option-takes-none", { option, value });
  } else if (value === undefined || (!inlineValue && /^-./.test(value)))
    throw new Refusal("cli.option-needs-value", { option });
}
