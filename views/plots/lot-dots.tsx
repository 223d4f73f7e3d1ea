import { scaleLinear } from "d3-scale";
import type { Locale } from "../messages/language.ts";
import { useLocale } from "../messages/spoken.ts";
import { tellerOf } from "../messages/tell.ts";
import { fixed } from "../numbers.ts";
import type { StateName } from "../result.tsx";
import { type Band, BandRows, nameWidth } from "./bands.tsx";
import { PartAxis } from "./density-axis.tsx";
import { domainOf } from "./density-domain.ts";
import { type Drawing, PlotFigure } from "./figure.tsx";
import { Mark, type Shape } from "./marks.tsx";

/** A weighed piece of a lot. */
export interface LotDot {
  ticket: string;
  /** g/cm³ */
  value: number;
  state: StateName;
}

export interface LotDotsPlot {
  id: string;
  /** oldest first */
  dots: readonly LotDot[];
  /** what pieces of the lot are claimed as */
  bands: readonly Band[];
  claimId?: string;
}

/** A piece by its state: full where its claim stands, crossed where it is excluded, a ring where nothing is decided. */
const shapes: Record<StateName, Shape> = {
  consistent: "full",
  "consistent-not-unique": "full",
  excluded: "cross",
  inconclusive: "ring",
  "no-claim": "ring",
  "no-valid-reading": "ring",
};

const roomBeside = 500;
const edge = 10;
/** a column of dots is this wide, and a dot this far above the one before, where there is room */
const column = 12;
const tall = 150;

/** Every piece of a lot as a dot on the density axis, stacked where they crowd; the newest carries its ticket. */
export function LotDots({ id, dots, bands, claimId }: LotDotsPlot) {
  const locale = useLocale();
  const t = tellerOf(locale);
  return (
    <PlotFigure
      id={id}
      caption={t("plots.lot-dots")}
      captionUnseen
      message={t("plots.lot-dots-are", { count: dots.length })}
      draw={(width) =>
        draw({ id, dots, bands, ...(claimId === undefined ? {} : { claimId }) }, width, locale)
      }
      table={{
        head: [t("lots.list.ticket"), t("lots.list.density"), t("lots.list.finding")],
        rows: dots.map(({ ticket, value, state }) => [ticket, fixed(value, 3, locale), t(`state.${state}`)]),
      }}
    />
  );
}

function draw({ dots, bands, claimId }: LotDotsPlot, width: number, locale: Locale): Drawing {
  const known = [
    ...bands,
    ...dots.map(({ ticket, value }) => ({ id: ticket, name: ticket, low: value, high: value })),
  ];
  const domain = domainOf({ id: "", bands: known });
  const beside = width >= roomBeside;
  const names = beside ? Math.min(0.38 * width, nameWidth(bands, claimId, locale) + 14) : 0;
  const left = beside ? Math.max(120, Math.ceil(names)) : edge;
  const right = width - edge;
  const scale = scaleLinear().domain(domain).range([left, right]);
  const x = (at: number) => Math.round(10 * scale(at)) / 10;
  const placed = stacked(dots, scale);
  const most = Math.max(1, ...placed.map(({ place }) => place + 1));
  const step = Math.min(column, tall / most);
  const axis = 30 + most * step;
  const newest = placed.at(-1);
  const under = BandRows({
    ...{ bands, x, domain, left, right, beside, locale, top: axis + 34 },
    ...(claimId === undefined ? {} : { claimId }),
  });
  const heightOf = (place: number) => axis - 8 - place * step;
  return {
    height: axis + 34 + under.height,
    content: (
      <>
        {placed.map(({ ticket, state, at, place }) => (
          <Mark key={ticket} shape={shapes[state]} x={at} y={heightOf(place)} />
        ))}
        {newest && (
          <text
            x={Math.min(right - 20, Math.max(left + 20, newest.at))}
            y={heightOf(newest.place) - 10}
            text-anchor="middle"
            class="strong"
          >
            {newest.ticket}
          </text>
        )}
        <PartAxis {...{ scale, left, right, locale }} y={axis} />
        {under.content}
      </>
    ),
  };
}

/** Each dot in its column, one above the other. */
function stacked(dots: readonly LotDot[], scale: (at: number) => number) {
  const columns = new Map<number, number>();
  return dots.map((dot) => {
    const number = Math.round(scale(dot.value) / column);
    const place = columns.get(number) ?? 0;
    columns.set(number, place + 1);
    return { ...dot, at: number * column, place };
  });
}
