import { Refusal } from "../../calibration/refusal.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { Happened } from "../ledger/ledger.ts";
import { displayStepG } from "../lots/weighed-mass.ts";
import { type NamedPerson, namedBy, reasonOf, secondTo } from "../settlements/person.ts";
import { agreementsOf } from "./agreement.ts";
import type { MeltCommand } from "./commands.ts";
import type { Melt } from "./melt.ts";

/** A lot that is melted: what it weighs by its pieces, stones taken off, and by how much scales explain a difference. */
export interface MeltedLot {
  id: string;
  name: string;
  sumG: number;
  stepsG: readonly number[];
  decimals: number;
  /** name of the melt it lies in already */
  meltedIn?: string;
}

/** What a decision on a melt rests on beside the melt itself. */
export interface MeltKnown {
  /** the lots that are to be melted; only for `make-melt` */
  lots: readonly MeltedLot[];
  /** whether a record with a measured density has this id; only for `pour-melt` */
  isMeasured?: boolean;
  people?: readonly NamedPerson[] | undefined;
}

/** What happens when this is asked of the melt: the entries to write. Pure. Throws Refusal when it is not done. */
export function decideMelt(melt: Melt | undefined, command: MeltCommand, known: MeltKnown): Happened[] {
  if (command.do === "make-melt") {
    if (melt) throw new Refusal("melt.made-already", { melt: melt.name }, "name");
    return [{ kind: "melt-made", body: made(command.melt, known), key: command.subject }];
  }
  if (!melt) throw new Refusal("melt.none");
  if (command.do === "reopen-melt") {
    if (!melt.settled) throw new Refusal("melt.not-settled", { melt: melt.name });
    const by = namedBy(command.by);
    const second = secondTo(by, command.second, { people: known.people });
    return [{ kind: "melt-reopened", body: { reason: reasonOf(command.reason), by, second } }];
  }
  if (melt.settled) throw new Refusal("melt.settled", { melt: melt.name });
  switch (command.do) {
    case "pour-melt":
      return [{ kind: "melt-poured", body: poured(melt, command.poured, known) }];
    case "drill-melt":
      return [{ kind: "melt-drilled", body: drilled(melt, command.drilled) }];
    case "state-tolerance": {
      const { tolerance } = command;
      const by = namedBy(tolerance.by);
      const isChange = melt.tolerances[tolerance.metal] !== undefined;
      const body = { ...tolerance, by, ...(isChange ? { reason: reasonOf(tolerance.reason) } : {}) };
      return [{ kind: "melt-tolerance", body }];
    }
    case "assay-melt": {
      const { assay } = command;
      if (!melt.drillings.some(({ body }) => body.drilling === assay.drilling))
        throw new Refusal("melt.drilling-unknown", { drilling: assay.drilling }, "drilling");
      return [{ kind: "melt-assay", body: { ...assay, by: namedBy(assay.by) } }];
    }
    case "exclude-melt-assay": {
      const { entry, by, reason } = command.excluded;
      const found = melt.assays.find((one) => one.entry.id === entry && one.excluded === undefined);
      if (!found) throw new Refusal("melt.assay-unknown");
      const body = { entry, by: namedBy(by), reason: reasonOf(reason) };
      return [{ kind: "melt-assay-excluded", body }];
    }
    case "settle-melt":
      return [{ kind: "melt-settled", body: settled(melt, command.by) }];
  }
}

/** What went into the crucible is what the lots weigh, as far as scales explain, or somebody says why not. */
function made(melt: Omit<BodyOf<"melt-made">, "lots_g">, { lots }: MeltKnown): BodyOf<"melt-made"> {
  const elsewhere = lots.find(({ meltedIn }) => meltedIn !== undefined);
  if (elsewhere)
    throw new Refusal("melt.lot-elsewhere", { lot: elsewhere.name, melt: elsewhere.meltedIn ?? "" }, "lots");
  const sumG = lots.reduce((sum, one) => sum + one.sumG, 0);
  const decimals = Math.max(0, ...lots.map((one) => one.decimals));
  const withinG = 2 * Math.hypot(displayStepG(melt.before), ...lots.flatMap(({ stepsG }) => stepsG));
  const differenceG = Number(melt.before.grams) - sumG;
  const reason = melt.reason?.trim() ?? "";
  if (Math.abs(differenceG) > withinG + 1e-9 && reason === "")
    throw new Refusal(
      "melt.before-differs",
      {
        before_g: { decimal: melt.before.grams },
        lots_g: { decimal: sumG.toFixed(decimals) },
        within_g: { decimal: withinG.toFixed(decimals) },
      },
      "reason",
    );
  const { reason: _, ...rest } = melt;
  return {
    ...rest,
    by: namedBy(melt.by),
    lots_g: sumG.toFixed(decimals),
    ...(reason === "" ? {} : { reason }),
  };
}

/** Metal is lost in melting and never gained, beyond what scales explain. */
function poured(melt: Melt, body: BodyOf<"melt-poured">, { isMeasured }: MeltKnown): BodyOf<"melt-poured"> {
  const gainedG = Number(body.after.grams) - Number(melt.before.grams);
  if (gainedG > 2 * Math.hypot(displayStepG(melt.before), displayStepG(body.after)) + 1e-9)
    throw new Refusal(
      "melt.gained",
      { after_g: { decimal: body.after.grams }, before_g: { decimal: melt.before.grams } },
      "after",
    );
  if (body.bar !== undefined && !isMeasured) throw new Refusal("melt.bar-unknown", { bar: body.bar }, "bar");
  return { ...body, by: namedBy(body.by) };
}

function drilled(melt: Melt, body: BodyOf<"melt-drilled">): BodyOf<"melt-drilled"> {
  if (!melt.poured) throw new Refusal("melt.not-poured", { melt: melt.name }, "drilling");
  if (melt.drillings.some((one) => one.body.drilling === body.drilling))
    throw new Refusal("melt.drilled-already", { drilling: body.drilling }, "drilling");
  return { ...body, by: namedBy(body.by) };
}

function settled(melt: Melt, by: string): BodyOf<"melt-settled"> {
  if (!melt.poured) throw new Refusal("melt.not-poured", { melt: melt.name });
  const agreements = agreementsOf(melt);
  const missing = agreements.find((one) => one.missing)?.missing;
  if (missing) throw new Refusal(missing.code, missing.params);
  const results = agreements.flatMap(({ result }) => result ?? []);
  if (results.length === 0) throw new Refusal("melt.no-assay", { melt: melt.name });
  return {
    before_g: melt.before.grams,
    after_g: melt.poured.body.after.grams,
    results,
    by: namedBy(by),
  };
}
