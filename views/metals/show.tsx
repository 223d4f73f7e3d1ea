import type { ComponentChildren } from "preact";
import { fixed, fromTo } from "../numbers.ts";
import { type Band, DensityAxis } from "../plots/density.tsx";
import { Caution, Facts, Rows, Sheet } from "../sheet.tsx";
import type { Locale } from "../words/index.ts";

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
  source: string;
  verified: boolean;
  notes?: string;
  /** lead, cadmium, beryllium, mercury, uranium and so on */
  hazard?: string;
  recipes: readonly { id: string; name: string }[];
  /** neighbours on the axis, this one among them */
  neighbours: readonly Band[];
  /** metals whose bands meet this one, with the harmless test that separates them */
  lookAlikes: readonly { id: string; name: string; separatedBy: string }[];
  locale?: Locale;
}

export function MetalPage(metal: MetalView) {
  const { locale = "en" } = metal;
  const known = (value: string | undefined): ComponentChildren => value ?? "not known";
  return (
    <>
      {metal.hazard !== undefined && <Caution title="Caution">{<p>{metal.hazard}</p>}</Caution>}
      <p class="result-value">{fromTo(metal.low, metal.high, locale)} g/cm³</p>
      <p>
        Usual value {fixed(metal.nominal, 3, locale)} g/cm³ at 20 °C; the band is what the recipe and the
        sources leave free.
      </p>
      <div class="sheet">
        <DensityAxis
          id="neighbours"
          caption="Neighbours on the density axis"
          bands={metal.neighbours}
          locale={locale}
        />
      </div>
      <div class="columns">
        <Sheet id="properties" title="What other tests would show">
          <Facts
            facts={[
              ["Family", metal.family],
              ["Magnet", metal.magnetism],
              ["Colour under the skin", metal.colour],
              ["Conductivity", known(metal.conductivity)],
              ["Speed of sound", known(metal.sound)],
              ["Expansion", known(metal.expansion)],
              ["Met at a bench", metal.likelihood],
            ]}
          />
        </Sheet>
        <Sheet id="composition" title="Composition">
          <Rows
            caption="Mass fractions"
            empty="No composition is given."
            columns={[
              { head: "Element" },
              { head: "usual", number: true },
              { head: "from – to", number: true },
            ]}
            rows={metal.composition.map(({ element, nominal, range }) => ({
              key: element,
              cells: [element, nominal, range],
            }))}
          />
          {metal.mixture && (
            <p>
              By the mixture law {metal.mixture.ideal} g/cm³; with the excess terms {metal.mixture.withExcess}{" "}
              g/cm³.
            </p>
          )}
          {metal.recipes.length > 0 && (
            <>
              <h3>Recipes</h3>
              <Links items={metal.recipes} />
            </>
          )}
        </Sheet>
      </div>
      <Sheet id="look-alikes" title="What a density cannot tell from it">
        {metal.lookAlikes.length === 0 && (
          <p>No other metal of the library has a band that meets this one.</p>
        )}
        <LookAlikes list={metal.lookAlikes.slice(0, shownAtOnce)} />
        {metal.lookAlikes.length > shownAtOnce && (
          <details>
            <summary>{metal.lookAlikes.length - shownAtOnce} more</summary>
            <LookAlikes list={metal.lookAlikes.slice(shownAtOnce)} />
          </details>
        )}
      </Sheet>
      <Sheet id="source" title="Where this comes from">
        <p>{metal.source}</p>
        <p>
          {metal.verified ? "Seen in the source named." : "From memory: not yet checked against a source."}
        </p>
        {metal.notes !== undefined && <p>{metal.notes}</p>}
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
          <a href={`/metals/${id}`}>{name}</a>: {separatedBy}
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
