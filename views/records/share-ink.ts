/** The inks of a picture that travels alone: those of the style sheet on light paper. */
export const ink = {
  paper: "#fffefb",
  ink: "#14202b",
  pencil: "#47535f",
  rule: "#d9d3c4",
  line: "#767160",
  blue: "#143f72",
  warning: "#951a2a",
};

type Inks = Readonly<Record<string, string>>;

const letters: Inks = { fill: ink.ink, "font-size": "13" };

/** What the style sheet says of each part of a density axis, as attributes. */
const parts: Readonly<Record<string, Inks>> = {
  faint: { fill: ink.pencil },
  strong: { "font-weight": "600" },
  axis: { stroke: ink.ink, fill: "none", "stroke-width": "2" },
  tick: { stroke: ink.ink, fill: "none" },
  hair: { stroke: ink.line, fill: "none" },
  here: { fill: ink.ink },
  curve: { stroke: ink.blue, fill: "none", "stroke-width": "1.75", "stroke-linejoin": "round" },
  area: { fill: "#c9daee" },
  interval: { fill: "#e3ecf5" },
  brackets: { stroke: ink.blue, fill: "none", "stroke-width": "2" },
  "band-claim": { fill: ink.blue },
  "band-not-excluded": { fill: "#ecd9a8", stroke: "#6b4a00", "stroke-width": "1.25" },
  "band-overlap": { fill: ink.ink, opacity: "0.42" },
  "band-excluded": { fill: "none", stroke: "#7f7a67", "stroke-width": "1.25", "stroke-dasharray": "3 3" },
  "band-open": { fill: "none", stroke: ink.ink, "stroke-width": "1.5" },
};

/** Markup of a plot with its classes turned into attributes, so that it is whole without the style sheet. */
export function drawnInInk(markup: string): string {
  return markup.replace(/<([a-z]+)([^>]*?)(\/?)>/g, (_, name: string, rest: string, end: string) => {
    const kind = / class="([\w-]+)"/.exec(rest)?.[1] ?? "";
    const inks = { ...(name === "text" ? letters : {}), ...parts[kind] };
    const attributes = Object.entries(inks).map(([key, value]) => ` ${key}="${value}"`);
    return `<${name}${attributes.join("")}${rest.replace(/ class="[^"]*"/, "")}${end}>`;
  });
}
