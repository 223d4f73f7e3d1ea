import { keysOf } from "../../calibration/keyed.ts";
import type { Code } from "../../calibration/message.ts";
import { Field } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import type { Tell } from "../messages/tell.ts";
import { inLocale } from "../numbers.ts";
import { Bench } from "./apparatus.tsx";
import type { MethodFormView, MethodView } from "./view.ts";

/** A bar in the jaws of a calliper. */
function Drawing({ t }: { t: Tell }) {
  return (
    <>
      <Bench y={182} />
      <rect class="metal" x="86" y="96" width="88" height="60" />
      <path d="M40 60H222V74H40ZM64 74V152L86 140V74ZM196 74V152L174 140V74Z" />
      <path d="M86 170H174M86 165V175M174 165V175" stroke-width="1" />
      <text x="92" y="52">
        {t("dimensions.drawing.calliper")}
      </text>
      <text x="110" y="130">
        {t("dimensions.drawing.piece")}
      </text>
    </>
  );
}

/** Shapes with their lengths, as their messages name them. */
const shapes = {
  box: ["length", "width", "height"],
  disc: ["diameter", "thickness"],
  cylinder: ["diameter", "height"],
  tube: ["diameter", "wall", "length"],
} as const;

/** What stands in the folded fields until something else is typed, % and °C. */
const usual = { deviation: "0", temperature: "20" } as const;

function Form({ values, refused }: MethodFormView) {
  const locale = useLocale();
  const t = useTell();
  const entry = (name: string, label: Code, unit: string, hint?: Code, fallback = "") => {
    const value = values[name] ?? fallback;
    return (
      <Field
        key={name}
        name={name}
        label={t(label)}
        value={refused ? value : inLocale(value, locale)}
        after={<span>{unit}</span>}
        {...(hint ? { hint: t(hint) } : {})}
        {...(refused?.field === name ? { error: refused.message } : {})}
      />
    );
  };
  const isOpen = (shape: keyof typeof shapes) => {
    const own = shapes[shape].some((name) => (values[`${shape}-${name}`] ?? "") !== "");
    return (
      own ||
      (shape === "box" &&
        !Object.keys(values).some((name) => name.includes("-") && name !== "form-half-width"))
    );
  };
  const isStated = keysOf(usual).some((name) => (values[name] ?? usual[name]) !== usual[name]);
  return (
    <>
      <p class="hint">{t("dimensions.entries")}</p>
      <div class="shapes">
        {keysOf(shapes).map((shape) => (
          <details key={shape} name="dimensions-shape" open={isOpen(shape) || undefined}>
            <summary>{t(`dimensions.shape.${shape}`)}</summary>
            <div class="three-fields">
              {shapes[shape].map((name) => entry(`${shape}-${name}`, `dimensions.length.${name}`, "mm"))}
            </div>
          </details>
        ))}
      </div>
      <div class="three-fields">
        {entry("u", "dimensions.u", "mm", "dimensions.u-hint")}
        {entry("step", "dimensions.step", "mm", "dimensions.step-hint")}
        {entry("form-half-width", "dimensions.form-half-width", "%", "dimensions.form-half-width-hint")}
      </div>
      <details class="inline" open={isStated || undefined}>
        <summary>{t("dimensions.more")}</summary>
        <div class="three-fields">
          {entry("deviation", "dimensions.form", "%", "dimensions.form-hint", usual.deviation)}
          {entry("temperature", "dimensions.temperature", "°C", undefined, usual.temperature)}
        </div>
      </details>
    </>
  );
}

export const dimensions: MethodView = {
  Drawing,
  Form,
  cautions: ["dimensions.caution.soft", "dimensions.caution.hollow", "dimensions.caution.capsule"],
};
