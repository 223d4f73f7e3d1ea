/** The inks of a picture that travels alone: those of the style sheet on light paper. */
export const ink = {
  paper: "#fffefa",
  ink: "#16202b",
  pencil: "#47525e",
  rule: "#cfc8b4",
  line: "#6f6a5b",
  blue: "#17427a",
  warning: "#962015",
};

type Inks = Readonly<Record<string, string>>;

const rim: Inks = {
  fill: ink.ink,
  "font-size": "13.5",
  stroke: ink.paper,
  "stroke-width": "4",
  "stroke-linejoin": "round",
  "paint-order": "stroke",
};

/** What the style sheet says of each part of a density axis, as attributes. */
const parts: Readonly<Record<string, Inks>> = {
  faint: { fill: ink.pencil },
  head: { fill: ink.pencil, "font-size": "12.5", "font-weight": "600" },
  strong: { "font-weight": "600" },
  axis: { stroke: ink.ink, fill: "none", "stroke-width": "1.75" },
  tick: { stroke: ink.ink, fill: "none" },
  curve: { stroke: ink.ink, fill: "none", "stroke-width": "2", "stroke-linejoin": "round" },
  interval: { fill: "#b9cfe8" },
  "interval-edge": { stroke: ink.ink, "stroke-dasharray": "2 3" },
  hatch: { stroke: ink.blue, "stroke-width": "2.5" },
  "band-claim": { stroke: ink.blue, "stroke-width": "2" },
  "band-not-excluded": { fill: "#8a6410", stroke: ink.ink },
  "band-excluded": { fill: "none", stroke: ink.line, "stroke-dasharray": "4 3" },
  "band-plain": { fill: "#f0ecdf", stroke: ink.line },
  thread: { fill: "none", stroke: ink.line, "stroke-width": "1.25" },
};

/** Markup of a plot with its classes turned into attributes, so that it is whole without the style sheet. */
export function drawnInInk(markup: string): string {
  return markup.replace(/<([a-z]+)([^>]*?)(\/?)>/g, (_, name: string, rest: string, end: string) => {
    const kind = / class="([\w-]+)"/.exec(rest)?.[1] ?? "";
    const inks = { ...(name === "text" ? rim : {}), ...parts[kind] };
    const attributes = Object.entries(inks).map(([key, value]) => ` ${key}="${value}"`);
    return `<${name}${attributes.join("")}${rest.replace(/ class="[^"]*"/, "")}${end}>`;
  });
}
