import { Refusal } from "../../calibration/refusal.ts";
import { applySchema } from "../ledger/shared/apply-schema.ts";
import { retireMonth } from "../ledger/shared/retire.ts";
import { monthAfter, schemaStatements } from "../ledger/shared/schema.ts";
import { command } from "./command.ts";

const told = {
  name: "database",
  options: {
    apply: { type: "boolean", default: false },
    role: { type: "string" },
    from: { type: "string" },
    months: { type: "string", default: "24" },
    retire: { type: "string" },
  },
  takesArguments: false,
} as const;

/** Ten years; each month is two tables. */
const mostMonths = 120;

/** `underhook database`: prints what makes a shared ledger; with --apply does it, by the rights of DATABASE_URL. */
export const run = (args: string[]): Promise<number> =>
  command(told, args, async ({ values, say }) => {
    const at = new Date().toISOString();
    if (values.retire !== undefined) {
      const month = monthFrom(values.retire, "retire");
      const { place, rows } = await retireMonth({ databaseUrl: address(), now: () => new Date(), month });
      say.out("cli.database.retired", { place, month, rows });
      return 0;
    }
    const from = monthFrom(values.from ?? monthAfter(at.slice(0, 7), -1));
    const months = Number(values.months);
    if (!Number.isInteger(months) || months < 1 || months > mostMonths)
      throw new Refusal("cli.database.months", { typed: values.months, most: mostMonths }, "months");
    if (values.role !== undefined && !/^[a-z_][a-z0-9_]{0,62}$/.test(values.role))
      throw new Refusal("cli.database.role", { typed: values.role }, "role");
    const statements = schemaStatements({ role: values.role, from, months, at });
    if (!values.apply) {
      console.log(statements.map((one) => `${one};\n`).join("\n"));
      return 0;
    }
    const { place, rest } = await applySchema(address(), statements);
    say.out("cli.database.done", { place, until: monthAfter(from, months - 1) });
    for (const month of rest) say.out("cli.database.in-the-rest", { month });
    return 0;
  });

function address(): string {
  const databaseUrl = process.env.DATABASE_URL;
  if (!databaseUrl) throw new Refusal("cli.database.no-address", {});
  return databaseUrl;
}

function monthFrom(typed: string, option = "from"): string {
  if (/^[12]\d{3}-(0[1-9]|1[0-2])$/.test(typed)) return typed;
  throw new Refusal("cli.database.month", { typed }, option);
}
