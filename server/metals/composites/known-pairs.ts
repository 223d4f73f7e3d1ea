import { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import { codeIn } from "../catalogue-code.ts";
import knownPairRows from "../data/known-pairs.json" with { type: "json" };
import {
  type Colour,
  colours,
  type Likelihood,
  likelihoods,
  type Magnetism,
  type Metal,
  magnetisms,
} from "../metal.ts";
import { figure, provenanceOf } from "../sourced-figure.ts";

/** A pair of components that somebody is known to make solid pieces of, and what such a piece shows. */
export interface KnownPair {
  /** the first is the one whose share is stated */
  pair: readonly [string, string];
  called: Message;
  likelihood: Likelihood;
  /** % IACS at a mass fraction of the first component */
  conductivityIacsPercent: (share: number) => readonly [number, number];
  soundMPerS: number | null;
  magnetism: Magnetism;
  colour: Colour;
  provenance: Metal["provenance"];
}

const percent = z.number().min(0).max(110);
const file = z.strictObject({
  pairs: z.array(
    z.strictObject({
      pair: z.tuple([z.string(), z.string()]),
      called: z.string(),
      likelihood: figure(z.enum(likelihoods)),
      /** share of the first, lowest and highest % IACS; straight between them */
      conductivity_iacs_percent: figure(
        z.array(z.tuple([z.number().min(0).max(1), percent, percent])).min(2),
      ),
      sound_m_s: figure(z.number().min(300).max(20_000)).optional(),
      magnetism: figure(z.enum(magnetisms)),
      colour: figure(z.enum(colours)),
    }),
  ),
});

type Row = z.infer<typeof file>["pairs"][number];

/** Pairs outside this list are still computed, and called rare. */
export const knownPairs: readonly KnownPair[] = file.parse(knownPairRows).pairs.map(knownPair);

function knownPair(row: Row): KnownPair {
  const { conductivity_iacs_percent: conductivity, sound_m_s: sound, magnetism, colour } = row;
  return {
    pair: row.pair,
    called: message(codeIn(row.called, "known-pairs.json")),
    likelihood: row.likelihood.value,
    conductivityIacsPercent: (share) => between(conductivity.value, share),
    soundMPerS: sound?.value ?? null,
    magnetism: magnetism.value,
    colour: colour.value,
    provenance: {
      conductivityLow: provenanceOf(conductivity),
      conductivityHigh: provenanceOf(conductivity),
      magnetism: provenanceOf(magnetism),
      colour: provenanceOf(colour),
      ...(sound ? { sound: provenanceOf(sound) } : {}),
    },
  };
}

function between(
  points: Row["conductivity_iacs_percent"]["value"],
  share: number,
): readonly [number, number] {
  const after = Math.max(
    1,
    points.findIndex(([at]) => at >= share),
  );
  const [[from, lowBefore, highBefore], [to, lowAfter, highAfter]] = [points[after - 1]!, points[after]!];
  const part = (share - from) / (to - from);
  return [lowBefore + part * (lowAfter - lowBefore), highBefore + part * (highAfter - highBefore)];
}
