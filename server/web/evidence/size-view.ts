import { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import type { EvidenceTarget } from "../../../views/evidence/form.tsx";
import type { SizeView } from "../../../views/evidence/size.tsx";
import { isCode } from "../../../views/messages/catalogue.ts";
import type { Sentence } from "../../../views/sentence.tsx";
import type { Specification } from "../../metals/specifications/specification.ts";
import type { Test } from "../../weighing/item.ts";
import { whenOf } from "../when.ts";

/** A form of evidence that was sent back. */
export interface RefusedForm {
  kind: string;
  values: Record<string, string>;
  problems: SizeView["problems"];
}

interface SizeParts extends EvidenceTarget {
  specifications: readonly Specification[];
  asksMass: boolean;
  refused: RefusedForm | undefined;
  zone: string;
}

/** Mass and size of a piece against specifications. */
export function sizeView(
  tests: readonly Test[],
  { specifications, asksMass, refused, zone, ...target }: SizeParts,
): SizeView {
  const sizes = tests.filter(({ entry }) => entry.body.test === "size");
  const own = refused?.kind === "size" ? refused : { values: {}, problems: [] };
  return {
    ...target,
    specifications: specifications.map(({ id, called, massG, finenessPermille }) => ({
      value: id,
      label: message("specification.option", {
        specification: called,
        mass_g: massG,
        fineness_permille: finenessPermille,
      }),
    })),
    values: own.values,
    problems: own.problems,
    made: sizes.map(({ entry, excluded }) => ({
      id: entry.id,
      specification: String(entry.body.specification ?? ""),
      source: String(entry.body.source ?? ""),
      when: whenOf(entry.at, zone),
      lines: linesOf(entry.body.lines) ?? [entry.body.outcome],
      ...(excluded === undefined ? {} : { excluded }),
    })),
    asksMass,
  };
}

const toldByCode = z.custom<Message>(
  (value) => typeof value === "object" && value !== null && "code" in value && isCode(String(value.code)),
);

/** The comparisons of an entry: messages, or sentences as entries of earlier versions hold them. */
function linesOf(lines: unknown): Sentence[] | undefined {
  const read = z.array(z.union([z.string(), toldByCode])).safeParse(lines);
  return read.success ? read.data : undefined;
}
