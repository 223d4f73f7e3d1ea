import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Rows } from "../sheet.tsx";

/** One figure and where it comes from; composition and limits stand in their own table and have no value here. */
export interface FigureView {
  figure: FigureName | "other";
  value?: string;
  from: Sentence;
}

export type FigureName =
  | "composition"
  | "limits"
  | "nominal"
  | "low"
  | "high"
  | "expansion"
  | "magnetism"
  | "conductivity-low"
  | "conductivity-high"
  | "sound"
  | "elastic-modulus"
  | "poisson-ratio"
  | "colour"
  | "likelihood";

/** The figures of a metal, each with its own source. */
export function Figures({ figures }: { figures: readonly FigureView[] }) {
  const t = useTell();
  return (
    <Rows
      caption={t("metal.figure.caption")}
      empty={t("metal.figure.none")}
      columns={[
        { head: t("metal.figure.name") },
        { head: t("metal.figure.value"), number: true },
        { head: t("metal.figure.from") },
      ]}
      rows={figures.map(({ figure, value, from }, place) => ({
        key: `${figure}-${place}`,
        cells: [t(`metal.figure.${figure}`), value ?? "", <Sentence key="f" message={from} />],
      }))}
    />
  );
}
