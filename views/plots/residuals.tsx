import { scaleLinear } from "d3-scale";
import { useLocale, useTell } from "../messages/spoken.ts";
import { fixed } from "../numbers.ts";
import { type Drawing, PlotFigure } from "./figure.tsx";

/** One published alloy: its density, by how much it lies off the law, and what the two leave open. */
export interface Residual {
  alloy: string;
  gPerCm3: number;
  lawGPerCm3: number;
  /** published over computed, less 1, % */
  offPercent: number;
  /** half-width that the law's uncertainty and the print leave, % */
  withinPercent: number;
  source: string;
}

const [top, height, bottom] = [14, 240, 40];
const mostPercent = 2;

/** How far published densities lie off the mixture law, over the density, each with what may be expected. */
export function Residuals({ id, residuals }: { id: string; residuals: readonly Residual[] }) {
  const locale = useLocale();
  const t = useTell();
  return (
    <PlotFigure
      id={id}
      caption={t("mixture-law.plot")}
      message={t("mixture-law.says", { count: residuals.length })}
      draw={(width) => draw(residuals, width)}
      table={{
        head: [
          t("mixture-law.alloy"),
          t("mixture-law.published"),
          t("mixture-law.computed"),
          "%",
          t("metals.source"),
        ],
        rows: residuals.map(({ alloy, gPerCm3, lawGPerCm3, offPercent, source }) => [
          alloy,
          fixed(gPerCm3, 2, locale),
          fixed(lawGPerCm3, 2, locale),
          fixed(offPercent, 2, locale),
          source,
        ]),
      }}
      locale={locale}
    />
  );
}

function draw(residuals: readonly Residual[], width: number): Drawing {
  const x = scaleLinear()
    .domain([6, 22])
    .range([44, width - 12]);
  const y = scaleLinear()
    .domain([-mostPercent, mostPercent])
    .range([top + height, top]);
  const base = top + height;
  return {
    height: base + bottom,
    content: [
      ...[-2, -1, 0, 1, 2].map((percent) => (
        <g key={percent}>
          <line
            class={percent === 0 ? "axis" : "grid"}
            x1={x(6)}
            x2={x(22)}
            y1={y(percent)}
            y2={y(percent)}
          />
          <text class="faint" x={x(6) - 6} y={y(percent) + 4} text-anchor="end">
            {percent > 0 ? `+${percent}` : percent < 0 ? `−${-percent}` : "0 %"}
          </text>
        </g>
      )),
      ...[8, 12, 16, 20].map((density) => (
        <text key={`d${density}`} class="faint" x={x(density)} y={base + 20} text-anchor="middle">
          {density}
        </text>
      )),
      <text key="unit" class="faint" x={width - 12} y={base + 36} text-anchor="end">
        g/cm³
      </text>,
      ...residuals.map(({ alloy, gPerCm3, offPercent, withinPercent, source }) => (
        <g key={`${alloy} ${gPerCm3} ${source}`}>
          <line
            class="hair"
            x1={x(gPerCm3)}
            x2={x(gPerCm3)}
            y1={y(Math.max(-mostPercent, offPercent - withinPercent))}
            y2={y(Math.min(mostPercent, offPercent + withinPercent))}
          />
          <circle class="point" cx={x(gPerCm3)} cy={y(offPercent)} r={3.5} />
        </g>
      )),
    ],
  };
}
