import type { ComponentChildren } from "preact";
import { useTell } from "./messages/spoken.ts";
import type { Tell } from "./messages/tell.ts";

/** The three ways of weighing. */
export type MethodName = "hung" | "displaced" | "flask";

/** A line drawing of a method, with its name as title and the way of it as description. */
export function MethodDrawing({ method, id = `drawing-${method}` }: { method: MethodName; id?: string }) {
  const t = useTell();
  const Draw = drawings[method];
  return (
    <svg class="drawing" viewBox="0 0 260 190" role="img" aria-labelledby={`${id}-title`}>
      <title id={`${id}-title`}>{t(`methods.${method}`)}</title>
      <Draw t={t} />
    </svg>
  );
}

const drawings: Record<MethodName, (parts: { t: Tell }) => ComponentChildren> = {
  hung,
  displaced,
  flask,
};

function Bench({ y }: { y: number }) {
  return <path d={`M6 ${y}H254`} />;
}

/** A plain slab with a pan: a balance of no make. */
function Slab({ x, y, width }: { x: number; y: number; width: number }) {
  return (
    <>
      <rect x={x} y={y} width={width} height={20} rx="3" />
      <path d={`M${x + 12} ${y - 6}H${x + width - 12}M${x + width / 2} ${y - 6}V${y}`} />
    </>
  );
}

function Beaker({ x, y, width, height }: { x: number; y: number; width: number; height: number }) {
  const surface = y + height * 0.28;
  return (
    <>
      <rect class="water" x={x + 1} y={surface} width={width - 2} height={y + height - surface - 1} />
      <path d={`M${x - 4} ${y}L${x} ${y + 4}V${y + height}H${x + width}V${y}`} />
      <path d={`M${x} ${surface}H${x + width}`} stroke-width="1" />
    </>
  );
}

function hung({ t }: { t: Tell }) {
  return (
    <>
      <path d="M6 62H116M124 62H254M30 62V182M230 62V182" />
      <Bench y={182} />
      <Slab x={80} y={41} width={80} />
      <Beaker x={82} y={104} width={76} height={78} />
      <path d="M120 61V146" stroke-width="1.25" />
      <ellipse class="metal" cx="120" cy="154" rx="17" ry="8" />
      <text x="168" y="36">
        {t("drawings.balance")}
      </text>
      <text x="166" y="150">
        {t("drawings.water")}
      </text>
      <text x="40" y="92">
        {t("drawings.hanger")}
      </text>
      <path d="M92 88L117 84" stroke-width="1" />
    </>
  );
}

function displaced({ t }: { t: Tell }) {
  return (
    <>
      <Bench y={182} />
      <Slab x={70} y={161} width={104} />
      <Beaker x={88} y={76} width={68} height={79} />
      <path d="M214 182V22H122M200 182H228" />
      <path d="M122 22V122" stroke-width="1.25" />
      <ellipse class="metal" cx="122" cy="130" rx="17" ry="8" />
      <text x="208" y="60" text-anchor="end">
        {t("drawings.stand")}
      </text>
      <text x="14" y="154">
        {t("drawings.scale")}
      </text>
      <text x="36" y="112">
        {t("drawings.water")}
      </text>
    </>
  );
}

function flask({ t }: { t: Tell }) {
  return (
    <>
      <Bench y={182} />
      <Slab x={70} y={161} width={104} />
      <path class="water" d="M115 62V86L91 136Q86 154 100 154H144Q158 154 153 136L129 86V62Z" />
      <path d="M115 40V86L91 136Q86 154 100 154H144Q158 154 153 136L129 86V40" />
      <path d="M111 48L114 26H130L133 48Z" />
      {[
        [104, 147],
        [113, 149],
        [122, 147],
        [131, 149],
        [140, 147],
        [117, 141],
        [127, 141],
      ].map(([cx, cy]) => (
        <circle key={`${cx} ${cy}`} class="metal" cx={cx} cy={cy} r="3.4" stroke-width="1" />
      ))}
      <text x="142" y="42">
        {t("drawings.stopper")}
      </text>
      <text x="166" y="146">
        {t("drawings.grains")}
      </text>
      <text x="14" y="154">
        {t("drawings.scale")}
      </text>
    </>
  );
}
