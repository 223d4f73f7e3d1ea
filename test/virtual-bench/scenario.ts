import { benches, type Scale } from "./benches.ts";
import { type Chance, chances } from "./chance.ts";
import { type Customer, customer } from "./customers.ts";
import { measureOutline } from "./dimensions.ts";
import type { Pour } from "./liquids.ts";
import type { Request } from "./request.ts";
import type { Trouble } from "./trouble.ts";
import { type Method, type Piece, weigh } from "./weighing.ts";
import type { Bench } from "./world.ts";

/** A class of virtual measurements: one way of weighing on one bench, and what goes wrong in it. */
export interface Scenario {
  method: Method | "dimensions";
  scale: Scale;
  repeats: number;
  /** what bench and owner both know, beside the scale's usual */
  bench?: Partial<Bench>;
  /** what the bench truly does, where it is not what it states */
  truly?: Partial<Bench>;
  /** lightest and heaviest piece, g, where not the scale's usual */
  grams?: readonly [number, number];
  pour?: Pour;
  hangerShare?: number;
  pieces?: "genuine" | "genuine and fakes";
  trouble?: Trouble;
  /** what is weighed in the place of the piece */
  whole?(piece: Piece, chance: Chance): Piece;
  /** what the owner writes beside or instead of the plain request, rightly */
  states?(request: Request, piece: Piece, chance: Chance): Request;
}

/** One virtual measurement before it is computed. */
export interface Case {
  /** what the density should come to */
  truth: number;
  customer: Customer;
  request: Request;
}

/** The first `count` of the `of` measurements of a class; a part is always a part of the whole. */
export function casesOf(scenario: Scenario, seed: number, count: number): Case[] {
  const { method, scale, repeats, truly, pour, trouble, hangerShare = 0 } = scenario;
  const { whole = (piece) => piece, states = (request) => request } = scenario;
  const { bench: usual, lightestGrams, heaviestGrams } = benches[scale];
  const bench: Bench = { ...usual, ...scenario.bench };
  const [lightest, heaviest] = scenario.grams ?? [lightestGrams, heaviestGrams];
  return chances(seed, count).map((chance, n) => {
    const came = customer({ ...bench, ...truly }, chance, scenario.pieces ?? "genuine and fakes");
    const piece: Piece = {
      grams: lightest * (heaviest / lightest) ** chance.share("mass"),
      gPerCm3: came.gPerCm3,
    };
    const id = `${n}`;
    const weighed = whole(piece, chance);
    const request =
      method === "dimensions"
        ? measureOutline(id, weighed, bench, chance, came.claim)
        : weigh({
            ...{ id, method, piece: weighed, bench, truly, repeats, chance, pour, trouble },
            ...{ claim: came.claim, hangerGrams: hangerShare * piece.grams },
          });
    return { truth: piece.gPerCm3, customer: came, request: states(request, piece, chance) };
  });
}
