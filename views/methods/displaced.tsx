import type { Tell } from "../messages/tell.ts";
import { Beaker, Bench, Slab } from "./apparatus.tsx";
import type { MethodView } from "./view.ts";

function Drawing({ t }: { t: Tell }) {
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

export const displaced: MethodView = { Drawing };
