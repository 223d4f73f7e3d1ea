import { readFileSync } from "node:fs";

interface WebTypes {
  contributions: { html: { attributes: { name: string }[] } };
}

const webTypes = JSON.parse(
  readFileSync(
    new URL("../../node_modules/htmx.org/dist/editors/jetbrains/htmx.web-types.json", import.meta.url),
    "utf8",
  ),
) as WebTypes;

/** The attribute names that htmx itself publishes for editors. */
export const htmxNames = new Set(webTypes.contributions.html.attributes.map(({ name }) => name));

/** hx- attributes in the markup that htmx does not know. A name with ":inherited" counts as its stem. */
export function unknownHxNames(html: string): string[] {
  const names = [...html.matchAll(/\s(hx-[\w:-]+)(?=[\s=>/])/g)].map((match) => match[1] ?? "");
  return [...new Set(names)].filter((name) => !htmxNames.has(name.replace(/:inherited$/, "")));
}

/** What a strict content security policy would block, or what would reach outside: each as it stands in the markup. */
export function policyBreaches(html: string): string[] {
  const shapes = [
    /<style[\s>]/g,
    /\sstyle="/g,
    /<script(?![^>]*\ssrc=)[^>]*>/g,
    /\son\w+="/g,
    /\shx-on[\w:-]*=/g,
    /(?:src|href|action|formaction)="(?:https?:)?\/\/[^"]*"/g,
    /(?:src|href|action|formaction)="(?:javascript|data):[^"]*"/g,
  ];
  return shapes.flatMap((shape) => html.match(shape) ?? []);
}
