import type { Tell } from "../messages/tell.ts";
import { Beaker, Bench, Slab } from "./apparatus.tsx";
import type { MethodView } from "./view.ts";

function Drawing({ t }: { t: Tell }) {
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

export const hung: MethodView = { Drawing };
