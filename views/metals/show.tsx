import { useLocale, useTell } from "../messages/spoken.ts";
import { tellId } from "../messages/tell.ts";
import { fixed, fromTo } from "../numbers.ts";
import type { Band } from "../plots/bands.tsx";
import { DensityAxis } from "../plots/density.tsx";
import { Sentence } from "../sentence.tsx";
import { Caution, Facts, Fold, Rows } from "../sheet.tsx";
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
  /** how many of the figures are from memory */
  fromMemory: number;
  notes: readonly Sentence[];
  /** lead, cadmium, beryllium, mercury, uranium and so on, by the ids of the cautions */
  hazards: readonly string[];
  recipes: readonly { id: string; name: string; low: number; high: number }[];
  /** neighbours on the axis, this one among them */
  neighbours: readonly Band[];
  /** metals whose bands meet this one: how often met, worth in percent of this one, the harmless test that separates */
  alternatives: readonly {
    id: string;
    name: string;
    likelihood: string;
    worth: string;
    separatedBy: Sentence;
  }[];
  /** pieces in a thousand, offered as this one and weighed to ±U, that pass wrongly or are excluded wrongly */
  risks: readonly { expanded: string; wrong: string; unseen: string; rightly: string }[];
}

export function MetalPage(metal: MetalView) {
  const locale = useLocale();
  const t = useTell();
  return (
    <div class="two">
      <div>
        <p class="value">
          {fromTo(metal.low, metal.high, locale)} <small>g/cm³</small>
        </p>
        <p>{t("metal-page.usual", { density: fixed(metal.nominal, 3, locale) })}</p>
        {metal.hazards.length > 0 && (
          <Caution title={t("metal-page.caution")}>
            {metal.hazards.map((id) => (
              <p key={id}>{tellId("hazard.of", id, locale)}</p>
            ))}
          </Caution>
        )}
        <Properties metal={metal} />
        <Folded metal={metal} />
      </div>
      <div>
        <h2>{t("metal-page.alternatives")}</h2>
        <DensityAxis
          id="neighbours"
          caption={t("metal-page.neighbours")}
          bands={metal.neighbours}
          locale={locale}
        />
        {metal.alternatives.length === 0 && <p>{t("metal-page.no-alternative")}</p>}
        <Alternatives
          list={metal.alternatives.slice(0, shownAtOnce)}
          caption={t("metal-page.worth-and-test")}
        />
        {metal.alternatives.length > shownAtOnce && (
          <Fold title={t("metal-page.more", { count: metal.alternatives.length - shownAtOnce })}>
            <Alternatives
              list={metal.alternatives.slice(shownAtOnce)}
              caption={t("metal-page.more", { count: metal.alternatives.length - shownAtOnce })}
            />
          </Fold>
        )}
        <Fold title={t("metal-page.risks")}>
          <Risks risks={metal.risks} />
        </Fold>
      </div>
    </div>
  );
}

/** What other tests would show; left out is what is not known. */
function Properties({ metal }: { metal: MetalView }) {
  const t = useTell();
  return (
    <Facts
      facts={[
        [t("metal-page.magnet"), metal.magnetism],
        [t("metal-page.colour"), metal.colour],
        [t("metal-page.conductivity"), metal.conductivity],
        [t("metal-page.sound"), metal.sound],
        [t("metal-page.expansion"), metal.expansion],
        [
          t("metal-page.met"),
          <a key="m" href="/worth">
            {metal.likelihood}
          </a>,
        ],
      ]}
    />
  );
}

function Folded({ metal }: { metal: MetalView }) {
  const t = useTell();
  return (
    <>
      {metal.recipes.length > 0 && (
        <Fold title={t("metal-page.recipes")} note={metal.recipes.length}>
          <Recipes recipes={metal.recipes} />
        </Fold>
      )}
      <Fold title={t("metal-page.composition")}>
        <Composition metal={metal} />
      </Fold>
      <Fold
        title={t("metal-page.source")}
        note={t("metal-page.source-count", { figures: metal.figures.length, memory: metal.fromMemory })}
      >
        <Figures figures={metal.figures} />
        {metal.notes.map((note) => (
          <p key={typeof note === "string" ? note : note.code}>
            <Sentence message={note} />
          </p>
        ))}
      </Fold>
      <Fold title={t("metal-page.correct")}>
        <p>
          {t("metal-page.correct-how")} <a href="/metals/own">{t("metals.own")}</a>.
        </p>
      </Fold>
    </>
  );
}

function Recipes({ recipes }: { recipes: MetalView["recipes"] }) {
  const locale = useLocale();
  const t = useTell();
  return (
    <Rows
      caption={t("metal-page.recipes")}
      empty=""
      columns={[{ head: t("metals.metal") }, { head: "g/cm³", number: true }]}
      rows={recipes.map(({ id, name, low, high }) => ({
        key: id,
        cells: [
          <a key="a" href={`/metals/${id}`}>
            {name}
          </a>,
          fromTo(low, high, locale),
        ],
      }))}
    />
  );
}

function Composition({ metal: { composition, mixture } }: { metal: MetalView }) {
  const t = useTell();
  return (
    <>
      <Rows
        caption={t("metal-page.mass-fractions")}
        empty={t("metal-page.no-composition")}
        columns={[
          { head: t("metal-page.element") },
          { head: t("metal-page.usual-share"), number: true },
          { head: t("metal-page.range"), number: true },
        ]}
        rows={composition.map(({ element, nominal, range }) => ({
          key: element,
          cells: [element, nominal, range],
        }))}
      />
      {mixture && (
        <p>
          {t("metal-page.mixture", { ideal: mixture.ideal, withExcess: mixture.withExcess })}{" "}
          <a href="/mixture-law">{t("mixture-law.title")}</a>
        </p>
      )}
    </>
  );
}

/** So many alternatives are read at once; the rest opens on demand. */
const shownAtOnce = 5;

function Alternatives({ list, caption }: { list: MetalView["alternatives"]; caption: string }) {
  const t = useTell();
  if (list.length === 0) return null;
  return (
    <Rows
      caption={caption}
      empty=""
      columns={[
        { head: t("metals.metal") },
        { head: t("metal-page.met") },
        { head: t("metal-page.costs"), number: true },
        { head: t("metal-page.told-apart") },
      ]}
      rows={list.map(({ id, name, likelihood, worth, separatedBy }) => ({
        key: id,
        cells: [
          <a key="a" href={`/metals/${id}`}>
            {name}
          </a>,
          likelihood,
          worth,
          <Sentence key="s" message={separatedBy} />,
        ],
      }))}
    />
  );
}

function Risks({ risks }: { risks: MetalView["risks"] }) {
  const t = useTell();
  return (
    <>
      <Rows
        caption={t("metal-page.risks-caption")}
        empty=""
        columns={[
          { head: t("metal-page.weighed-to"), number: true },
          { head: t("metal-page.passes-wrongly"), number: true },
          { head: t("metal-page.same-density"), number: true },
          { head: t("metal-page.excluded-wrongly"), number: true },
        ]}
        rows={risks.map(({ expanded, wrong, unseen, rightly }) => ({
          key: expanded,
          cells: [expanded, wrong, unseen, rightly],
        }))}
      />
      <p class="hint">
        <a href="/worth">{t("result.global-risk-from")}</a>.
      </p>
    </>
  );
}
