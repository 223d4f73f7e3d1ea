import { Caution } from "./sheet.tsx";

/** Pieces that water harms, and what to do instead. Common practice of the trade. */
export const notToBeWetted = [
  "pearl, opal, turquoise, coral, amber, ivory",
  "glued, foiled or strung stones",
  "hollow pieces and pieces with a filling: water gets in and stays",
  "sealed or graded coins, and coins whose patina matters",
  "watches, and anything with a spring or a clasp of steel",
] as const;

/** Shown before the first immersion. */
export function WettingCaution() {
  return (
    <Caution title="Before it gets wet">
      <p>Ask, and have the owner's consent. Do not immerse:</p>
      <ul>
        {notToBeWetted.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </Caution>
  );
}

/** Shown beside other evidence: acids and magnets. */
export function TestingCaution() {
  return (
    <Caution title="Acids and strong magnets">
      <p>
        Acid is never the first test here, and it marks the piece. It needs eye, hand and breath protection,
        and training under your local rules.
      </p>
      <p>
        A strong magnet crushes fingers, stops pacemakers and disturbs balances: keep it an arm's length from
        all three.
      </p>
    </Caution>
  );
}

/** Shown where weights become money. */
export function BuyingCaution() {
  return (
    <Caution title="When money changes hands">
      <p>
        A scale used for buying must be legally verified, and its own indication is the one that counts; what
        is computed here is for information. Rules for dealing and hallmarking are local. Fineness for
        settlement is found by a licensed laboratory: gold by ISO 11426, silver by ISO 11427.
      </p>
    </Caution>
  );
}

/** Shown when lead, cadmium, beryllium, mercury or uranium is still alive. */
export function MetalCaution({ metal }: { metal: string }) {
  return (
    <Caution title={`Caution: ${metal}`}>
      <p>Do not file, drill, melt or sand it. Wash your hands; keep it from food and children.</p>
    </Caution>
  );
}
