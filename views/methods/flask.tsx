import type { Tell } from "../messages/tell.ts";
import { Bench, Slab } from "./apparatus.tsx";
import type { MethodView } from "./view.ts";

function Drawing({ t }: { t: Tell }) {
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

export const flask: MethodView = { Drawing };
