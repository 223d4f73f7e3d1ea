import { message, type Param } from "../../calibration/message.ts";
import { called } from "../metals/called.ts";
import type { Metal } from "../metals/metal.ts";
import { principal } from "../metals/share-of.ts";
import type { Candidate } from "./candidate.ts";
import { plainNames } from "./plain-names.ts";

const byFamily: Readonly<Record<string, Kind>> = {
  gold: "gold",
  silver: "silver",
  platinum: "platinum",
  palladium: "palladium",
  "brass-and-bronze": "copper",
  "white-copper-alloys": "copper",
  steel: "steel",
};

const byElement: Readonly<Record<string, Kind>> = {
  Au: "gold",
  Ag: "silver",
  Pt: "platinum",
  Pd: "palladium",
  Cu: "copper",
  Pb: "lead",
  Sn: "tin",
  Zn: "zinc",
  W: "tungsten",
  Fe: "steel",
};

type Kind =
  | "gold"
  | "silver"
  | "platinum"
  | "palladium"
  | "copper"
  | "lead"
  | "tin"
  | "zinc"
  | "tungsten"
  | "steel"
  | "purpose-made";

/** What a person at a counter calls a candidate by; undefined for one that only its own name tells. */
export function kindOf({ metal, occurrence }: Pick<Candidate, "metal" | "occurrence">): Kind | undefined {
  if (occurrence === "purpose-made") return "purpose-made";
  if (metal.family === "own") return undefined;
  return byFamily[metal.family] ?? byElement[principal(metal)];
}

/** So many kinds are named in a sentence. */
const named = 2;

/**
 * Candidates in plain words, in their order: one alone by its name, several of a kind by the kind. Kinds that are only
 * rarely met are told together with what does not fit into the sentence, as "others".
 */
export function inPlainWords(candidates: readonly Candidate[]): Param[] {
  const kinds = new Map<string, Candidate[]>();
  for (const one of candidates) {
    const kind = kindOf(one) ?? one.metal.id;
    const ofKind = kinds.get(kind);
    if (ofKind) ofKind.push(one);
    else kinds.set(kind, [one]);
  }
  const all = [...kinds.values()];
  const met = all.filter((of) => of.some(({ occurrence }) => occurrence !== "rare"));
  const listed = (met.length > 0 ? met : all).slice(0, named);
  const words = listed.map(plainWord);
  return listed.length < all.length ? [...words, message("group.others")] : words;
}

function plainWord(of: readonly Candidate[]): Param {
  const [first] = of as [Candidate, ...Candidate[]];
  const kind = kindOf(first);
  if (kind === "purpose-made") return message("group.purpose-made", { such_as: shortName(first.metal) });
  return of.length === 1 || kind === undefined ? shortName(first.metal) : message(`group.${kind}`);
}

/** The plain name of a metal that has one, and of a mixture the name without its shares. */
function shortName(metal: Metal): Param {
  const plain = plainNames[metal.id];
  return plain ? message(plain) : (metal.made?.params?.mixture ?? called(metal));
}
