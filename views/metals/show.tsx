import type { ComponentChildren } from "preact";
import { useLocale, useTell } from "../messages/spoken.ts";
import { tellId } from "../messages/tell.ts";
import { fixed, fromTo } from "../numbers.ts";
import type { Band } from "../plots/bands.tsx";
import { DensityAxis } from "../plots/density.tsx";
import { Caution, Facts, Rows, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
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
  /** lead, cadmium, beryllium, mercury, uranium and so on, by the ids of the cautions */
  hazards: readonly string[];
  recipes: readonly { id: string; name: string }[];
  /** neighbours on the axis, this one among them */
  neighbours: readonly Band[];
  /** metals whose bands meet this one, with the harmless test that separates them */
  alternatives: readonly { id: string; name: string; separatedBy: Told }[];
}

export function MetalPage(metal: MetalView) {
  const locale = useLocale();
  const t = useTell();
  const known = (value: string | undefined): ComponentChildren => value ?? t("metal-page.not-known");
  return (
    <>
      {metal.hazards.length > 0 && (
        <Caution title={t("metal-page.caution")}>
          {metal.hazards.map((id) => (
            <p key={id}>{tellId("hazard.of", id, locale)}</p>
          ))}
        </Caution>
      )}
      <p class="result-value">{fromTo(metal.low, metal.high, locale)} g/cm³</p>
      <p>{t("metal-page.usual", { density: fixed(metal.nominal, 3, locale) })}</p>
      <div class="sheet">
        <DensityAxis
          id="neighbours"
          caption={t("metal-page.neighbours")}
          bands={metal.neighbours}
          locale={locale}
        />
      </div>
      <div class="columns">
        <Sheet id="properties" title={t("metal-page.other-tests")}>
          <Facts
            facts={[
              [t("metal-page.family"), metal.family],
              [t("metal-page.magnet"), metal.magnetism],
              [t("metal-page.colour"), metal.colour],
              [t("metal-page.conductivity"), known(metal.conductivity)],
              [t("metal-page.sound"), known(metal.sound)],
              [t("metal-page.expansion"), known(metal.expansion)],
              [t("metal-page.met"), metal.likelihood],
            ]}
          />
        </Sheet>
        <Sheet id="composition" title={t("metal-page.composition")}>
          <Rows
            caption={t("metal-page.mass-fractions")}
            empty={t("metal-page.no-composition")}
            columns={[
              { head: t("metal-page.element") },
              { head: t("metal-page.usual-share"), number: true },
              { head: t("metal-page.range"), number: true },
            ]}
            rows={metal.composition.map(({ element, nominal, range }) => ({
              key: element,
              cells: [element, nominal, range],
            }))}
          />
          {metal.mixture && (
            <p>
              {t("metal-page.mixture", { ideal: metal.mixture.ideal, withExcess: metal.mixture.withExcess })}
            </p>
          )}
          {metal.recipes.length > 0 && (
            <>
              <h3>{t("metal-page.recipes")}</h3>
              <Links items={metal.recipes} />
            </>
          )}
        </Sheet>
      </div>
      <Sheet id="alternatives" title={t("metal-page.alternatives")}>
        {metal.alternatives.length === 0 && <p>{t("metal-page.no-alternative")}</p>}
        <Alternatives list={metal.alternatives.slice(0, shownAtOnce)} />
        {metal.alternatives.length > shownAtOnce && (
          <details>
            <summary>{t("metal-page.more", { count: metal.alternatives.length - shownAtOnce })}</summary>
            <Alternatives list={metal.alternatives.slice(shownAtOnce)} />
          </details>
        )}
      </Sheet>
      <Sheet id="source" title={t("metal-page.source")}>
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

/** So many alternatives are read at once; the rest opens on demand. */
const shownAtOnce = 8;

function Alternatives({ list }: { list: MetalView["alternatives"] }) {
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
