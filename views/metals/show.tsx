import type { ComponentChildren } from "preact";
import { fixed, fromTo } from "../numbers.ts";
import type { Band } from "../plots/bands.tsx";
import { DensityAxis } from "../plots/density.tsx";
import { Caution, Facts, Rows, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { Figures, type FigureView } from "./figures.tsx";

/** One metal of the library as its page shows it. Absent values are told as not known, never filled in. */
export interface MetalView {
  id: string;
  name: string;
  family: string;
  low: number;
  nominal: number;
  high: number;
  composition: readonly { element: string; nominal: string; range: string }[];
  /** band by the mixture law, when it can be computed; shown beside the stated one */
  mixture?: { ideal: string; withExcess: string };
  magnetism: string;
  colour: string;
  conductivity?: string;
  sound?: string;
  expansion?: string;
  likelihood: string;
  figures: readonly FigureView[];
  notes: readonly Told[];
  /** lead, cadmium, beryllium, mercury, uranium and so on */
  hazard?: string;
  recipes: readonly { id: string; name: string }[];
  /** neighbours on the axis, this one among them */
  neighbours: readonly Band[];
  /** metals whose bands meet this one, with the harmless test that separates them */
  lookAlikes: readonly { id: string; name: string; separatedBy: string }[];
}

export function MetalPage(metal: MetalView) {
  const locale = useLocale();
  const say = useWords().metal;
  const known = (value: string | undefined): ComponentChildren => value ?? say.notKnown;
  return (
    <>
      {metal.hazard !== undefined && (
        <Caution title={say.caution}>
          <p>
            <Told says={metal.hazard} />
          </p>
        </Caution>
      )}
      <p class="result-value">{fromTo(metal.low, metal.high, locale)} g/cm³</p>
      <p>{say.usual(fixed(metal.nominal, 3, locale))}</p>
      <div class="sheet">
        <DensityAxis id="neighbours" caption={say.neighbours} bands={metal.neighbours} locale={locale} />
      </div>
      <div class="columns">
        <Sheet id="properties" title={say.otherTests}>
          <Facts
            facts={[
              [say.family, metal.family],
              [say.magnet, metal.magnetism],
              [say.colour, metal.colour],
              [say.conductivity, known(metal.conductivity)],
              [say.sound, known(metal.sound)],
              [say.expansion, known(metal.expansion)],
              [say.met, metal.likelihood],
            ]}
          />
        </Sheet>
        <Sheet id="composition" title={say.composition}>
          <Rows
            caption={say.massFractions}
            empty={say.noComposition}
            columns={[
              { head: say.element },
              { head: say.usualShare, number: true },
              { head: say.range, number: true },
            ]}
            rows={metal.composition.map(({ element, nominal, range }) => ({
              key: element,
              cells: [element, nominal, range],
            }))}
          />
          {metal.mixture && <p>{say.mixture(metal.mixture.ideal, metal.mixture.withExcess)}</p>}
          {metal.recipes.length > 0 && (
            <>
              <h3>{say.recipes}</h3>
              <Links items={metal.recipes} />
            </>
          )}
        </Sheet>
      </div>
      <Sheet id="look-alikes" title={say.lookAlikes}>
        {metal.lookAlikes.length === 0 && <p>{say.noLookAlike}</p>}
        <LookAlikes list={metal.lookAlikes.slice(0, shownAtOnce)} />
        {metal.lookAlikes.length > shownAtOnce && (
          <details>
            <summary>{say.more(metal.lookAlikes.length - shownAtOnce)}</summary>
            <LookAlikes list={metal.lookAlikes.slice(shownAtOnce)} />
          </details>
        )}
      </Sheet>
      <Sheet id="source" title={say.source}>
        <Figures figures={metal.figures} />
        {metal.notes.map((note) => (
          <p key={typeof note === "string" ? note : note.code}>
            <Told says={note} />
          </p>
        ))}
      </Sheet>
    </>
  );
}

/** So many look-alikes are read at once; the rest opens on demand. */
const shownAtOnce = 8;

function LookAlikes({ list }: { list: MetalView["lookAlikes"] }) {
  return (
    <ul>
      {list.map(({ id, name, separatedBy }) => (
        <li key={id}>
          <a href={`/metals/${id}`}>{name}</a>: <Told says={separatedBy} />
        </li>
      ))}
    </ul>
  );
}

function Links({ items }: { items: readonly { id: string; name: string }[] }) {
  return (
    <ul>
      {items.map(({ id, name }) => (
        <li key={id}>
          <a href={`/metals/${id}`}>{name}</a>
        </li>
      ))}
    </ul>
  );
}
